using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Planning;
using Splitter.Recipes;
using Splitter.Stitching;

namespace Splitter.Parts;

/// <summary>
/// Stitches and marks to parts. The first part sews the folds on bare stabilizer, then its body; a later one sews the
/// corners it is set by, then crosses that show the fit, then its body; each sews the corners for later parts last.
/// </summary>
internal static class PartBuilder
{
    /// <param name="bodies">The artwork, for each hooping.</param>
    internal static ImmutableArray<Part> Build(
        Recipe recipe,
        Drawing drawing,
        Plan plan,
        ImmutableArray<ImmutableArray<BodyStep>> bodies
    )
    {
        var stops = new StopTexts(recipe.Cloth, new(recipe.Output));
        var takenOut = SewnOver.TakenOut(plan, bodies);
        return
        [
            .. plan.Hoopings.Select(
                (hooping, i) =>
                    new Part(
                        hooping,
                        Numbered(
                            Steps(drawing, plan, i, bodies[i], stops, recipe.Registration.Alignment),
                            takenOut[i],
                            stops
                        )
                    )
                    {
                        TakenOut = takenOut[i],
                    }
            ),
        ];
    }

    /// <param name="looks">The recipe asks for crosses that show the fit.</param>
    private static IEnumerable<Draft> Steps(
        Drawing drawing,
        Plan plan,
        int index,
        ImmutableArray<BodyStep> body,
        StopTexts stops,
        bool looks
    )
    {
        var hooping = plan.Hoopings[index];
        if (index == 0 && !plan.PlacementLines.IsEmpty)
            yield return new(
                StepKind.Placement,
                null,
                [.. plan.PlacementLines.Select(MarkStitcher.Line)],
                stops.MountOnFolds(hooping)
            );
        if (!hooping.Takes.IsEmpty)
        {
            ImmutableArray<Corner> taken = [.. hooping.Takes.Select(i => plan.Corners[i])];
            var set = stops.SetCorners(hooping, [.. taken.Select(c => c.Id)]);
            var byNeedle = looks && hooping.Alignments.IsEmpty;
            yield return new(
                StepKind.Corners,
                null,
                [.. taken.Select(MarkStitcher.Corner)],
                byNeedle ? [.. set, stops.NoCross] : set
            )
            {
                NeedleLook = byNeedle ? set.Length : null,
            };
        }
        if (!hooping.Alignments.IsEmpty)
            yield return new(
                StepKind.Alignment,
                null,
                [.. hooping.Alignments.Select(MarkStitcher.Cross)],
                stops.LookAtAlignment(hooping.Alignments.Length)
            );
        foreach (var step in body)
            yield return new(StepKind.Body, drawing.Threads[step.Thread], [.. step.Blocks], []);
        if (!hooping.Gives.IsEmpty)
            yield return new(
                StepKind.NextCorners,
                null,
                [.. hooping.Gives.Select(i => MarkStitcher.Corner(plan.Corners[i]))],
                []
            );
    }

    /// <summary>A step before its number and the stop that the next step asks for are known.</summary>
    private sealed record Draft(
        StepKind Kind,
        SewThread? Thread,
        ImmutableArray<Block> Blocks,
        ImmutableArray<string> Stop
    )
    {
        /// <summary>As of the step that it becomes.</summary>
        internal int? NeedleLook { get; init; }
    }

    private static ImmutableArray<Step> Numbered(
        IEnumerable<Draft> drafts,
        ImmutableArray<string> takenOut,
        StopTexts stops
    )
    {
        ImmutableArray<Draft> all = [.. drafts];
        return
        [
            .. all.Select(
                (step, i) =>
                    new Step(i + 1, step.Kind, step.Thread, Moves(step.Blocks), Stop(all, i, takenOut, stops))
                    {
                        NeedleLook = step.NeedleLook,
                    }
            ),
        ];
    }

    /// <summary>
    /// The stop after a step: its own work, the corners that the body would sew over, the thread of the next.
    /// </summary>
    private static ImmutableArray<string> Stop(
        ImmutableArray<Draft> steps,
        int index,
        ImmutableArray<string> takenOut,
        StopTexts stops
    )
    {
        if (index == steps.Length - 1)
            return [];
        var next = steps[index + 1];
        var change = stops.Change(steps[index].Thread, next.Kind, next.Thread);
        var corners =
            takenOut.IsEmpty || steps[index].Kind == StepKind.Body || next.Kind != StepKind.Body
                ? null
                : stops.TakeOut(takenOut);
        var clear = steps[index].Kind == StepKind.Placement ? stops.HandsClear : null;
        return [.. steps[index].Stop, .. new[] { corners, change, clear }.OfType<string>()];
    }

    internal static ImmutableArray<Move> Moves(ImmutableArray<Block> blocks) =>
        [
            .. blocks.Select(
                (block, i) =>
                    new Move(block, i > 0 && (block.IsCutBefore ?? JumpOrder.IsTrimmed(blocks[i - 1].End, block.Start)))
            ),
        ];
}
