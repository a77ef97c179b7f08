using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fit;

namespace Splitter.Correcting;

/// <summary>A measured offset on the drawing.</summary>
/// <param name="At">Where the new stitch should lie.</param>
/// <param name="Donor">Index of the hooping whose work is there.</param>
/// <param name="Offset">From there to where it lies, µm; on an edge as far as it is square to the edge.</param>
internal sealed record Sighting(Point At, int Donor, Vector Offset)
{
    /// <summary>More than this was measured wrongly or is better set again, µm: overlaps cover a tenth of it.</summary>
    private const int Farthest = 20 * Units.Millimetre;

    /// <summary>
    /// Nearer places tell no turn, µm: over this way one degree is 0.2 mm, which is less than one reads.
    /// </summary>
    private const int Apart = 10 * Units.Millimetre;

    /// <summary>A shift and a turn are seen at so many places that show both ways.</summary>
    private const int Fewest = 2;

    /// <summary>What was read along an edge and is less than this, µm, is not worth a word.</summary>
    private const int ToldAlong = Units.TapeStep;

    /// <summary>
    /// More places than this tell nothing new, and there are no more points of <see cref="ChiSquare"/>.
    /// </summary>
    private static int Most => ChiSquare.Most / 2;

    /// <summary>
    /// Square to the edge or line that was measured at, of length 1; null at a hole, which shows both ways.
    /// </summary>
    internal Vector? Across { get; init; }

    /// <summary>What it was called.</summary>
    internal string Name { get; init; } = "";

    /// <summary>Id of the corner or shape that is there.</summary>
    internal string On { get; init; } = "";

    internal bool ShowsBothWays => Across is null;

    internal TakenCorner Taken => new(At, Donor);

    /// <summary>As much of a way as is seen here: both of its components, or that across the edge.</summary>
    internal double[] Seen(Vector way) => Across is { } across ? [Vector.Dot(way, across)] : [way.X, way.Y];

    /// <summary>What was measured, on the drawing; or all that is wrong with it.</summary>
    internal static Result<ImmutableArray<Sighting>> Of(
        ImmutableArray<MeasurablePlace> places,
        Hooping hooping,
        ImmutableArray<MeasuredOffset> offsets,
        Place call
    )
    {
        var problems = new List<Diagnostic>();
        var seen = new List<Sighting>();
        ImmutableArray<string> holes = [.. places.Where(p => p.Across is null).Select(p => p.Name)];
        foreach (var (i, offset) in offsets.Index())
        {
            if (offsets.Take(i).Any(o => o.At == offset.At))
                problems.Add(CorrectionProblems.Twice(offset));
            else if (places.FirstOrDefault(p => p.Name == offset.At) is not { } found)
                problems.Add(CorrectionProblems.NoSuchPlace(offset, hooping.Letter, holes));
            else if (Math.Max(Math.Abs(offset.Right), Math.Abs(offset.Up)) > Farthest)
                problems.Add(CorrectionProblems.TooFar(offset, Farthest));
            else if (seen.Find(s => s.At == found.At && s.Donor == found.Donor) is { } same)
                problems.Add(CorrectionProblems.SameHole(offset, same.Name));
            else if (Read(found, hooping.Field, offset, problems) is { } sighting)
                seen.Add(sighting);
        }
        if (problems.TrueForAll(p => p.Severity != Severity.Error))
        {
            var both = seen.FindAll(s => s.ShowsBothWays);
            if (both.Count < Fewest || seen.Count > Most)
                problems.Add(CorrectionProblems.HowMany(call, both.Count, Most, both.Count < seen.Count, holes));
            else if (!ShowTurn(both))
                problems.Add(CorrectionProblems.TooNear(call, Apart, holes));
        }
        return Result.From<ImmutableArray<Sighting>>([.. seen], problems);
    }

    /// <summary>Holes enough, and two of them far enough apart.</summary>
    internal static bool ShowTurn(List<Sighting> holes) =>
        holes.Count >= Fewest && holes.Exists(a => holes.Exists(b => a.At.DistanceTo(b.At) >= Apart));

    /// <summary>Null where all that was read lies along an edge.</summary>
    private static Sighting? Read(MeasurablePlace place, Field field, MeasuredOffset offset, List<Diagnostic> problems)
    {
        var way = Vector.Between(field.Centre, field.ToDesign(new(offset.Right, offset.Up)));
        var sighting = new Sighting(place.At, place.Donor, way) { Name = place.Name, On = place.On };
        if (place.Across is not { } across)
            return sighting;
        var (square, along) = (Vector.Dot(way, across), Math.Abs(Vector.Dot(way, across.Left)));
        // One figure that goes more across than along is what a ruler laid square to the edge has shown.
        if (offset.IsOneWay && Math.Abs(square) >= along)
            (square, along) = (Math.Sign(square) * way.Length, 0);
        if (along >= ToldAlong)
        {
            problems.Add(CorrectionProblems.AlongEdge(offset, field.ToField((across * 1000).From(field.Centre))));
            if (offset.IsOneWay)
                return null;
        }
        return sighting with { Offset = across * square, Across = across };
    }
}
