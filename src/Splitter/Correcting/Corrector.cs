using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Parts;
using Splitter.Planning;
using Splitter.Planning.Fit;
using Splitter.Recipes;

namespace Splitter.Correcting;

/// <summary>
/// Measured offsets to a corrected part: what is left to sew of it, moved onto the work that is there.
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
        from seen in Sighting.Of(plan, hooping, asked.Offsets, asked.Place)
        let fit = new PredictedFit(recipe, plan.Hoopings.Length, plan.Corners)
        from judged in Accepted(recipe, asked, Judgement.Of(recipe, fit, hooping, seen))
        let moved = Moved(parts[hooping], judged)
        from part in Reachable(asked, Planned(parts[hooping]), moved)
        let joins = ExpectedFit.Of(recipe, drawing, plan, fit, hooping, [.. seen.Select(s => s.Taken)])
        let after = After(plan, hooping, judged, joins)
        select new Correction(
            after,
            part with
            {
                Hooping = after.Hoopings[hooping],
            },
            Told(plan.Hoopings[hooping].Field, judged),
            joins,
            asked.Offsets
        );

    private static Result<int> Hooping(Plan plan, PartOffsets asked)
    {
        var index = plan.Hoopings.Select(h => h.Letter).ToList().IndexOf(asked.Part);
        return index < 0
                ? Result.Fail<int>(CorrectionProblems.NoSuchPart(asked.Place, asked.Part, plan.Hoopings[^1].Letter))
            : index == 0 ? Result.Fail<int>(CorrectionProblems.FirstPart(asked.Place, asked.Part))
            : Result.Of(index);
    }

    /// <summary>Cloth that has stretched is followed as far as the recipe allows.</summary>
    private static Result<Judgement> Accepted(Recipe recipe, PartOffsets asked, Judgement judged) =>
        judged.Verdict switch
        {
            Verdict.Contradictory => Result.Fail<Judgement>(
                CorrectionProblems.Contradictory(asked.Place, judged.Residual)
            ),
            Verdict.Stretched when judged.Stretch.Most > recipe.Registration.FollowStretch => Result.Fail<Judgement>(
                CorrectionProblems.Stretched(asked.Place, judged.Stretch, recipe.Registration.FollowStretch)
            ),
            _ => Result.Of(judged),
        };

    /// <summary>
    /// What comes after the alignment stitches; the cloth is in the hoop already, and their stop has been. Every stitch
    /// is moved by itself and lies on the tape's grid again, so stitches keep their lengths to a tenth of a millimetre.
    /// </summary>
    private static Part Moved(Part part, Judgement judged) =>
        part with
        {
            Steps =
            [
                .. Planned(part)
                    .Select(
                        (step, i) =>
                            step with
                            {
                                Number = i + 1,
                                Moves = [.. step.Moves.Select(move => move with { Block = Moved(move.Block, judged) })],
                            }
                    ),
            ],
        };

    private static Stitching.Block Moved(Stitching.Block block, Judgement judged) =>
        block with
        {
            Stitches = [.. block.Stitches.Select(s => s with { At = OnTape(s.At, judged) })],
            Line = [.. block.Line.Select(p => OnTape(p, judged))],
        };

    private static Point OnTape(Point at, Judgement judged) =>
        judged.Move.Of(judged.Stretch.Of(new Vector(at.X, at.Y))).From(default).OnTape();

    private static IEnumerable<Step> Planned(Part part) =>
        part.Steps.Where(s => s.Kind is StepKind.Body or StepKind.NextCorners);

    /// <param name="planned">What is left to sew before it is moved: it says how far a move could go.</param>
    private static Result<Part> Reachable(PartOffsets asked, IEnumerable<Step> planned, Part part)
    {
        var (side, by) = Beyond(part.Field, part.Steps).MaxBy(b => b.By);
        if (by <= 0)
            return Result.Of(part);
        var room = -Beyond(part.Field, planned).Single(b => b.Side == side).By;
        return Result.Fail<Part>(
            CorrectionProblems.LeavesField(asked.Place, part.Letter, side, by, Math.Max(0, room), part.Field.Clearance)
        );
    }

    /// <summary>How far stitches reach past the ground that may be sewn, at each side; negative for room.</summary>
    private static (string Side, int By)[] Beyond(Field field, IEnumerable<Step> steps)
    {
        var (width, height) = ((field.Hoop.Width / 2) - field.Clearance, (field.Hoop.Height / 2) - field.Clearance);
        var places = steps
            .SelectMany(s => s.Moves)
            .SelectMany(m => m.Block.Stitches)
            .Select(s => field.ToField(s.At))
            .ToList();
        return
        [
            ("right", places.Max(p => p.U) - width),
            ("top", places.Max(p => p.V) - height),
            ("left", -places.Min(p => p.U) - width),
            ("bottom", -places.Min(p => p.V) - height),
        ];
    }

    private static Plan After(Plan plan, int hooping, Judgement judged, ImmutableArray<JoinChange> joins) =>
        plan with
        {
            Hoopings = plan.Hoopings.SetItem(hooping, plan.Hoopings[hooping] with { Takes = [], Alignments = [] }),
            Corners =
            [
                .. plan.Corners.Select(c =>
                    c.Donor != hooping
                        ? c
                        : c with
                        {
                            At = OnTape(c.At, judged),
                            ArmX = OnTape(c.ArmX, judged),
                            ArmY = OnTape(c.ArmY, judged),
                        }
                ),
            ],
            Joins = [.. plan.Joins.Select(join => joins.FirstOrDefault(j => j.Before == join)?.After ?? join)],
        };

    private static RealignMove Told(Field field, Judgement judged)
    {
        var about = judged.Move.About;
        var shift = judged.Move.Shift;
        var (from, to) = (field.ToField(about.From(default)), field.ToField((about + shift).From(default)));
        return new(judged.Verdict, to.U - from.U, to.V - from.V, judged.Move.Angle * 180 / Math.PI, judged.Residual)
        {
            Warp = judged.Stretch.Warp,
            Weft = judged.Stretch.Weft,
        };
    }
}
