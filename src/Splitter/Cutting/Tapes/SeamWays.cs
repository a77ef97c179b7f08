using System.Collections.Immutable;
using Splitter.Artwork.Tapes;
using Splitter.Geometry;

namespace Splitter.Cutting.Tapes;

/// <summary>
/// Ways along a seam, from where one stretch of a shape ends to where the next one begins: without them a seam would be
/// all knots.
/// </summary>
/// <param name="ground">What the part sews of the shape.</param>
internal sealed class SeamWays(Region ground)
{
    /// <summary>
    /// From the end of a row to the start of the next one the thread goes on if it is no farther, µm: a farther way
    /// shows beside the rows. Common practice, no source.
    /// </summary>
    private const int LongestOpen = 3 * Units.Millimetre;

    /// <summary>
    /// Beside rows, along them, it goes on as far as this, µm, where the part has sewn: there it lies as they do. Rows
    /// that nearly run along the seam end far from each other. By eye, no source.
    /// </summary>
    private const int LongestBeside = 8 * Units.Millimetre;

    /// <summary>
    /// Below rows that are still to come it goes on as far as this, µm: a trim takes as long as a hundred stitches, and
    /// this a tenth of that. Common practice, no source.
    /// </summary>
    private const int LongestHidden = 30 * Units.Millimetre;

    /// <summary>
    /// Longest stitch below later rows, µm, as of drawings, which are stitched after all is cut: longer ones would lift
    /// the rows. Common practice, no source.
    /// </summary>
    private const int HiddenStitch = 3 * Units.Millimetre;

    /// <summary>A way is looked at every so often, µm: no bare cloth that matters lies between.</summary>
    private const double Step = 500;

    private readonly Func<double, double, bool> covers = Polygons.Containment(ground);

    /// <summary>Stretches in one go wherever there is a way from one to the next.</summary>
    internal List<KeptThread> Joined(IEnumerable<KeptThread> stretches)
    {
        var joined = new List<KeptThread>();
        var stitches = ImmutableArray.CreateBuilder<KeptStitch>();
        KeptThread? open = null;
        foreach (var next in stretches)
            if (open is not null && Way(stitches, next.Stitches[0]) is { } way)
            {
                stitches.AddRange(way);
                stitches.AddRange(next.Stitches.AsSpan(1..));
                open = open with { IsWhole = (open.IsWhole.Starts, next.IsWhole.Ends) };
            }
            else
            {
                Close();
                stitches.AddRange(next.Stitches);
                open = next;
            }
        Close();
        return joined;

        void Close()
        {
            if (open is not null)
                joined.Add(open with { Stitches = stitches.ToImmutable() });
            stitches.Clear();
        }
    }

    /// <summary>The holes of a way, its start left out; null when there is none.</summary>
    private IEnumerable<KeptStitch>? Way(ImmutableArray<KeptStitch>.Builder before, KeptStitch start)
    {
        var end = before[^1];
        var length = end.At.DistanceTo(start.At);
        if (!IsRow(end) || !IsRow(start))
            return null;
        if (length == 0)
            return [];
        var arrived = start with { Kind = StitchKind.Travel, Source = StitchSource.Made };
        if (length <= LongestOpen)
            return [arrived];
        var longest =
            end.Kind == StitchKind.Underlay ? LongestHidden
            : before.Count > 1 && IsAlong(before[^2].At, end.At, start.At) ? LongestBeside
            : LongestOpen;
        if (length > longest || !IsCovered(end.At, start.At))
            return null;
        var count = (int)Math.Ceiling(length / HiddenStitch);
        return Enumerable
            .Range(1, count - 1)
            .Select(i => end.At.Towards(start.At, (double)i / count).OnTape())
            .Select(at => new KeptStitch(at, StitchKind.Travel, StitchSource.Made))
            .Append(arrived);
    }

    /// <summary>It is no farther from a row to a place than an open way is long.</summary>
    private static bool IsAlong(Point from, Point to, Point place)
    {
        var row = Vector.Between(from, to);
        return row.Length > 0 && Math.Abs(Vector.Cross(row.Unit, Vector.Between(to, place))) <= LongestOpen;
    }

    /// <summary>The part sews the shape there; its underlay before all of its rows.</summary>
    private bool IsCovered(Point from, Point to)
    {
        var length = from.DistanceTo(to);
        for (var way = Step; way < length; way += Step)
            if (from.Towards(to, way / length) is var at && !covers(at.X, at.Y))
                return false;
        return true;
    }

    private static bool IsRow(KeptStitch stitch) => stitch.Kind is StitchKind.Fill or StitchKind.Underlay;
}
