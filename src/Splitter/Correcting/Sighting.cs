using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fit;

namespace Splitter.Correcting;

/// <summary>A measured offset on the drawing.</summary>
/// <param name="At">Where the new stitch should lie.</param>
/// <param name="Donor">Index of the hooping whose work is there.</param>
/// <param name="Offset">From there to where it lies, µm.</param>
internal sealed record Sighting(Point At, int Donor, Vector Offset)
{
    /// <summary>More than this was measured wrongly or is better set again, µm: overlaps cover a tenth of it.</summary>
    private const int Farthest = 20 * Units.Millimetre;

    /// <summary>
    /// Nearer places tell no turn, µm: over this way one degree is 0.2 mm, which is less than one reads.
    /// </summary>
    private const int Apart = 10 * Units.Millimetre;

    /// <summary>
    /// More places than this tell nothing new, and there are no more points of <see cref="ChiSquare"/>.
    /// </summary>
    private static int Most => ChiSquare.Most / 2;

    internal TakenCorner Taken => new(At, Donor);

    /// <summary>What was measured, on the drawing; or all that is wrong with it.</summary>
    internal static Result<ImmutableArray<Sighting>> Of(
        Plan plan,
        int hooping,
        ImmutableArray<MeasuredOffset> offsets,
        Place call
    )
    {
        var problems = new List<Diagnostic>();
        var seen = new List<Sighting>();
        foreach (var (i, offset) in offsets.Index())
        {
            var place = PlaceOf(plan, hooping, offset.At);
            if (offsets.Take(i).Any(o => o.At == offset.At))
                problems.Add(CorrectionProblems.Twice(offset));
            else if (place is not { } found)
                problems.Add(
                    CorrectionProblems.NoSuchPlace(offset, plan.Hoopings[hooping].Letter, Names(plan, hooping))
                );
            else if (Math.Max(Math.Abs(offset.Right), Math.Abs(offset.Up)) > Farthest)
                problems.Add(CorrectionProblems.TooFar(offset, Farthest));
            else
                seen.Add(new(found.At, found.Donor, OnDrawing(plan.Hoopings[hooping].Field, offset)));
        }
        if (problems.Count == 0 && seen.Count is < 2 || seen.Count > Most)
            problems.Add(CorrectionProblems.HowMany(call, seen.Count, Most, Names(plan, hooping)));
        else if (problems.Count == 0 && !seen.Exists(s => s.At.DistanceTo(seen[0].At) >= Apart))
            problems.Add(CorrectionProblems.TooNear(call, Apart, Names(plan, hooping)));
        return problems.Count == 0
            ? Result.Of<ImmutableArray<Sighting>>([.. seen])
            : Result.Fail<ImmutableArray<Sighting>>([.. problems]);
    }

    private static TakenCorner? PlaceOf(Plan plan, int hooping, string name)
    {
        var crosses = plan.Hoopings[hooping].Alignments;
        for (var i = 0; i < crosses.Length; i++)
            if (Texts.Numbers.Count(i + 1) == name)
                return new(crosses[i].At, crosses[i].With);
        var corner = plan.Hoopings[hooping].Takes.Select(t => plan.Corners[t]).FirstOrDefault(c => c.Id == name);
        return corner is null ? null : new(corner.At, corner.Donor);
    }

    private static IEnumerable<string> Names(Plan plan, int hooping) =>
        [
            .. plan.Hoopings[hooping].Alignments.Select((_, i) => Texts.Numbers.Count(i + 1)),
            .. plan.Hoopings[hooping].Takes.Select(t => plan.Corners[t].Id),
        ];

    private static Vector OnDrawing(Field field, MeasuredOffset offset)
    {
        var tip = field.ToDesign(new(offset.Right, offset.Up));
        return Vector.Between(field.Centre, tip);
    }
}
