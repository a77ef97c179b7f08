using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter.Parts;

/// <summary>
/// Hidden thread a little aside where it makes too many layers: its needle holes are moved, left out or added to. In
/// tips, where there is no other way for <see cref="HiddenTravel"/>, a few tenths of a millimetre are room enough.
/// </summary>
/// <param name="layers">Of the whole cloth; what is changed is counted there.</param>
/// <param name="holes">The same of needle holes.</param>
/// <param name="most">Layers that cloth and needle bear.</param>
internal sealed class RoomyTravel(CrowdedSquares crowded, ThreadGrid layers, ThreadGrid holes, double most)
{
    /// <summary>How far holes are moved, µm: some steps, up to the next square.</summary>
    private static readonly ImmutableArray<int> Reaches = [200, 400, 600, 800];

    /// <summary>Directions in which they are.</summary>
    private const int Directions = 16;

    private static readonly ImmutableArray<Vector> Moves =
    [
        .. from reach in Reaches
        from i in Enumerable.Range(0, Directions)
        let angle = 2 * Math.PI * i / Directions
        select new Vector(reach * Math.Cos(angle), reach * Math.Sin(angle)),
    ];

    /// <summary>What moves makes room for others: so often all thread is gone through at most.</summary>
    private const int Rounds = 4;

    /// <summary>Nearer to its old way than this, µm, thread is as hidden as it was.</summary>
    private const double AsBefore = 100;

    /// <summary>A way is looked at this closely, µm.</summary>
    private const double Stride = 100;

    /// <summary>What a micrometre of longer thread must save of layers too many, µm²: else nothing is gained.</summary>
    private const double WorthLength = 20;

    /// <summary>A stitch, and its number or that of the last one whose place it takes.</summary>
    private readonly record struct Numbered(Stitch Stitch, int Number);

    /// <param name="blocks">Of a part, in sewing order.</param>
    /// <param name="cover">Of these.</param>
    internal void Move(Block[] blocks, CoveredCells cover)
    {
        int[] open = [.. Enumerable.Range(0, blocks.Length).Where(i => IsNearCrowded(blocks[i]))];
        if (open.Length == 0)
            return;
        var threads = new List<Numbered>[blocks.Length];
        foreach (var i in open)
            threads[i] = [.. Rest(blocks[i], cover.FirstOf(i))];
        var moved = new bool[blocks.Length];
        var any = true;
        for (var round = 0; any && round < Rounds; round++)
        {
            any = false;
            foreach (var i in open)
                if (Moved(threads[i], cover))
                    any = moved[i] = true;
        }
        foreach (var i in open.Where(i => moved[i]))
            blocks[i] = With(blocks[i], threads[i]);
    }

    /// <summary>What may move: all but short stitches that are a tie.</summary>
    private static IEnumerable<Numbered> Rest(Block block, int number)
    {
        var (first, end) = ShortTie.Rest(block);
        for (var i = first; i < end; i++)
            yield return new(block.Stitches[i], number + i);
    }

    private static Block With(Block block, List<Numbered> moved)
    {
        var (first, end) = ShortTie.Rest(block);
        return block with
        {
            Stitches = [.. block.Stitches[..first], .. moved.Select(s => s.Stitch), .. block.Stitches[end..]],
        };
    }

    private bool IsNearCrowded(Block block)
    {
        for (var i = 1; i < block.Stitches.Length; i++)
            if (IsHidden(block.Stitches[i]) && crowded.Meet(block.Stitches[i - 1].At, block.Stitches[i].At))
                return true;
        return false;
    }

    private static bool IsHidden(Stitch stitch) => stitch.Use is StitchUse.Travel or StitchUse.Underlay;

    /// <summary>Goes through a thread once, and says whether anything was moved.</summary>
    private bool Moved(List<Numbered> thread, CoveredCells cover)
    {
        var any = false;
        for (var i = 1; i < thread.Count; i++)
        {
            if (!IsHidden(thread[i].Stitch))
                continue;
            var last = i + 1 < thread.Count && IsHidden(thread[i + 1].Stitch) ? i + 1 : i;
            if (!Meets(thread, i) && (last == i || !Meets(thread, last)))
                continue;
            Point[] old = [.. thread[(i - 1)..(last + 1)].Select(s => s.Stitch.At)];
            var number = thread[last].Number;
            if (Better(old, number + 1, cover) is not { } way)
                continue;
            thread.RemoveRange(i, last - i + 1);
            thread.InsertRange(i, way[1..].Select(p => new Numbered(new(p, StitchUse.Travel), number)));
            any = true;
        }
        return any;
    }

    private bool Meets(List<Numbered> thread, int stitch) =>
        crowded.Meet(thread[stitch - 1].Stitch.At, thread[stitch].Stitch.At);

    /// <summary>The way between the same ends that makes fewest layers too many, if it is another one.</summary>
    /// <param name="next">Number of the first stitch that can hide it.</param>
    private Point[]? Better(Point[] old, int next, CoveredCells cover)
    {
        layers.Lay(old, -ThreadGrid.ThreadWidth);
        var (best, least) = (old, (double)layers.TooMany(old, most));
        var length = Length(old);
        var fullest = least > 0 ? layers.MostBelow(old) : 0;
        if (least > 0)
            foreach (var way in Ways(old))
                if (
                    WorthLength * Math.Max(0, Length(way) - length) is var longer
                    && longer < least
                    && IsSewable(way, old, next, cover)
                    && layers.TooMany(way, most) + longer is var sum
                    && sum < least
                    && layers.MostBelow(way) <= fullest
                    && IsHidden(way, old, next, cover)
                )
                    (best, least) = (way, sum);
        layers.Lay(best, ThreadGrid.ThreadWidth);
        if (best == old)
            return null;
        foreach (var at in old[1..^1])
            holes.Close(at);
        foreach (var at in best[1..^1])
            holes.Pierce(at);
        return best;
    }

    /// <summary>Its hole left out or moved, or one more on the first stitch.</summary>
    private static IEnumerable<Point[]> Ways(Point[] old)
    {
        if (old.Length == 3)
        {
            yield return [old[0], old[2]];
            foreach (var at in Around(old[1]))
                yield return [old[0], at, old[2]];
        }
        foreach (var at in Around(old[0].Towards(old[1], 0.5)))
            yield return [old[0], at, .. old[1..]];
    }

    private static IEnumerable<Point> Around(Point middle) => Moves.Select(move => move.From(middle).OnTape());

    /// <summary>Stitches of a length that hidden ones have, and new holes below later thread, where few are.</summary>
    private bool IsSewable(Point[] way, Point[] old, int next, CoveredCells cover)
    {
        for (var i = 1; i < way.Length; i++)
            if (way[i - 1].DistanceTo(way[i]) is < StitchRules.Shortest or > Ties.HiddenStitch)
                return false;
        foreach (var p in way)
            if (!old.Contains(p) && !(cover.IsHidden(p, next) && holes.HolesAt(p) < ThreadGrid.Crowded))
                return false;
        return true;
    }

    /// <summary>Later thread hides all of a way that is not as good as on the old one.</summary>
    internal static bool IsHidden(Point[] way, Point[] old, int next, CoveredCells cover)
    {
        for (var i = 1; i < way.Length; i++)
        {
            var steps = Math.Max(1, (int)Math.Ceiling(way[i - 1].DistanceTo(way[i]) / Stride));
            for (var k = 0; k <= steps; k++)
                if (way[i - 1].Towards(way[i], (double)k / steps) is var p && !cover.IsHidden(p, next) && !IsOn(old, p))
                    return false;
        }
        return true;
    }

    private static bool IsOn(Point[] way, Point at)
    {
        for (var i = 1; i < way.Length; i++)
            if (Polygons.Distance(way[i - 1], way[i], at, at) <= AsBefore)
                return true;
        return false;
    }

    private static double Length(Point[] way)
    {
        var sum = 0.0;
        for (var i = 1; i < way.Length; i++)
            sum += way[i - 1].DistanceTo(way[i]);
        return sum;
    }
}
