using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Parts;
using Splitter.Planning;
using Splitter.Planning.Fit;
using Splitter.Recipes;

namespace Splitter.Correcting;

/// <summary>
/// Measured offsets to a corrected part: what is left to sew of it, moved onto the work that is there, and before it
/// crosses at the measured places that show whether the move is right.
/// </summary>
internal static class Corrector
{
    internal static Result<Correction> Correct(
        Recipe recipe,
        Drawing drawing,
        Plan plan,
        ImmutableArray<Part> parts,
        PartOffsets asked
    ) =>
        from hooping in Hooping(plan, asked)
        let places = MeasurablePlace.Of(drawing, plan, hooping)
        from seen in Sighting.Of(places, plan.Hoopings[hooping], asked.Offsets, asked.Place)
        let fit = new PredictedFit(recipe, plan.Hoopings.Length, plan.Corners)
        from judged in Accepted(
            recipe,
            asked,
            Judgement.Of(recipe, fit, hooping, seen),
            () => OddFigure.Of(recipe, fit, plan, hooping, seen)
        )
        let expected = new ExpectedFit(recipe, drawing, plan, hooping, judged.Followed)
        let joins = expected.With([.. seen.Where(s => s.ShowsBothWays).Select(s => s.Taken)])
        let shown = CheckCrosses.Shown(parts[hooping].Field, judged, seen)
        let after = After(plan, hooping, judged, joins, CheckCrosses.Of(parts[hooping], judged, shown))
        let moved = Moved(recipe, parts[hooping], judged, after.Hoopings[hooping])
        // What fits is sewn as it is, and nothing of this comes to pass.
        from part in judged.Verdict == Verdict.Fits
            ? Result.Of(moved)
            : from part in FieldRoom.Within(asked, Left(parts[hooping]), moved)
            from told in Result.Of(
                part,
                [
                    .. UncoveredJoins.Of(asked, plan, expected, places, seen, joins),
                    .. seen.Except(shown).Select(s => CorrectedTapeProblems.NoCross(asked.Place, s.Name)),
                    .. OffCentre(asked, parts[hooping], part),
                ]
            )
            select told
        select new Correction(
            after,
            part,
            Told(part.Field, judged),
            [.. joins.Where(j => j.Joins(hooping) || j.Uncovers).OrderBy(j => !j.Uncovers)],
            [.. asked.Offsets.Where(o => seen.Any(s => s.Name == o.At))],
            [.. asked.Offsets.Where(o => shown.Any(s => s.Name == o.At))]
        )
        {
            Left = [.. seen.Select(s => (s.Name, MeasuredMove.LeftAt(s, judged.Move, judged.Stretch)))],
            HasSewnCrosses = !plan.Hoopings[hooping].Alignments.IsEmpty,
        };

    /// <summary>Which part it is; those that cannot be corrected are refused.</summary>
    internal static Result<int> Hooping(Plan plan, PartOffsets asked)
    {
        var index = plan.Hoopings.Select(h => h.Letter).ToList().IndexOf(asked.Part);
        return index < 0
                ? Result.Fail<int>(
                    CorrectionProblems.NoSuchPart(asked.Place, asked.Part, [.. plan.Hoopings.Select(h => h.Letter)])
                )
            : index == 0 ? Result.Fail<int>(CorrectionProblems.FirstPart(asked.Place, asked.Part))
            : Result.Of(index);
    }

    /// <summary>Cloth that has stretched is followed as far as the recipe allows.</summary>
    private static Result<Judgement> Accepted(
        Recipe recipe,
        PartOffsets asked,
        Judgement judged,
        Func<OddFigure?> odd
    ) =>
        judged.Verdict switch
        {
            Verdict.Contradictory => Result.Fail<Judgement>(
                CorrectionProblems.Contradictory(asked.Place, judged.Residual, odd())
            ),
            Verdict.Stretched when judged.Stretch.Most > recipe.Registration.FollowStretch => Result.Fail<Judgement>(
                CorrectionProblems.Stretched(asked.Place, judged.Stretch, recipe.Registration.FollowStretch, odd())
            ),
            _ => Result.Of(judged),
        };

    /// <summary>
    /// What comes after the alignment stitches, moved; the cloth is in the hoop already. Every stitch is moved by
    /// itself and lies on the tape's grid again: each of its ends is rounded by up to 0.07 mm, so that its length
    /// changes by up to 0.14 mm, and by the stretch.
    /// </summary>
    /// <param name="hooping">As it is after the move, with the crosses to check it by.</param>
    private static Part Moved(Recipe recipe, Part part, Judgement judged, Hooping hooping)
    {
        ImmutableArray<Step> left =
        [
            .. Left(part)
                .Select(
                    (step, i) =>
                        step with
                        {
                            Number = i + 2,
                            Moves = LooseMoves.Tied([
                                .. step.Moves.Select(move => move with { Block = Moved(move.Block, judged) }),
                            ]),
                        }
                ),
        ];
        var stops = new StopTexts(recipe.Cloth, new(recipe.Output));
        ImmutableArray<Step> steps = [CheckCrosses.Step(hooping.Alignments, part, left[0], stops), .. left];
        return part with
        {
            Hooping = hooping,
            Steps = steps,
            Visits = FieldBox.Visits(
                part.Field,
                FieldBox.Around(part.Field, part.Steps),
                FieldBox.Around(part.Field, steps)
            ),
        };
    }

    private static Stitching.Block Moved(Stitching.Block block, Judgement judged) =>
        block with
        {
            Stitches = [.. block.Stitches.Select(s => s with { At = judged.OnTape(s.At) })],
            Line = [.. block.Line.Select(judged.OnTape)],
        };

    private static IEnumerable<Step> Left(Part part) =>
        part.Steps.Where(s => s.Kind is StepKind.Body or StepKind.NextCorners);

    /// <summary>
    /// A far move of a part that fills its field on one side only: the other side has no room for as much.
    /// </summary>
    private static IEnumerable<Diagnostic> OffCentre(PartOffsets asked, Part planned, Part moved)
    {
        var (before, after) = (
            FieldBox.Around(planned.Field, planned.Steps),
            FieldBox.Around(moved.Field, moved.Steps)
        );
        if (moved.Visits.IsEmpty && !after.HasMiddleOf(before))
            yield return CorrectedTapeProblems.OffCentre(asked.Place, moved.Letter);
    }

    private static Plan After(
        Plan plan,
        int hooping,
        Judgement judged,
        ImmutableArray<JoinChange> joins,
        ImmutableArray<AlignmentStitch> crosses
    ) =>
        plan with
        {
            Hoopings = plan.Hoopings.SetItem(hooping, plan.Hoopings[hooping] with { Takes = [], Alignments = crosses }),
            Corners =
            [
                .. plan.Corners.Select(c =>
                    c.Donor != hooping
                        ? c
                        : c with
                        {
                            At = judged.OnTape(c.At),
                            ArmX = judged.OnTape(c.ArmX),
                            ArmY = judged.OnTape(c.ArmY),
                        }
                ),
            ],
            Joins = [.. plan.Joins.Select(join => joins.FirstOrDefault(j => j.Before == join)?.After ?? join)],
        };

    /// <summary>A turn and a stretch move each place otherwise: what is told is the middle of the hoop.</summary>
    private static RealignMove Told(Field field, Judgement judged)
    {
        var to = field.ToField(judged.Lays(field.Centre).From(default));
        return new(judged.Verdict, to.U, to.V, judged.Move.Angle * 180 / Math.PI, judged.Residual)
        {
            Warp = judged.Stretch.Warp,
            Weft = judged.Stretch.Weft,
        };
    }
}
