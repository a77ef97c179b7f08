using System.Runtime.InteropServices;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter.Parts;

/// <summary>
/// Rows end earlier where more thread lies than cloth and needle bear and what lies over or below them covers the cloth
/// without: of rims and overlaps as much is left out as makes too many layers.
/// </summary>
/// <param name="cover">What lies over each other there.</param>
/// <param name="layers">Of the whole cloth; what is changed is counted there.</param>
/// <param name="most">Layers that cloth and needle bear.</param>
internal sealed class RowEnds(RowCover cover, ThreadGrid layers, double most)
{
    /// <summary>Ends are tried this far apart, µm: half a thread's width.</summary>
    private const int Step = ThreadGrid.ThreadWidth / 2;

    /// <summary>How many steps earlier a row may end: 2 mm, more than a rim and an overlap.</summary>
    private const int MostSteps = 10;

    /// <summary>Stitches run the same way if the cosine of the angle between them is more: some 35 degrees.</summary>
    private const double SameWay = 0.8;

    /// <summary>Rows this near to a cross stay, µm: as far as they might end earlier, and its arm.</summary>
    private const int NearCross = (MostSteps * Step) + AlignmentStitch.Arm;

    /// <summary>Where a row may end, and the hole of it that comes next before that.</summary>
    private readonly record struct End(Point At, int Beside);

    /// <summary>Shortens rows of a block and says whether there were any.</summary>
    /// <param name="block">Its place in the order in which those of all parts are sewn.</param>
    /// <param name="crosses">Those of later parts that should meet it: rows stay as they are there.</param>
    internal bool Shorten(List<Stitch> stitches, int block, Point[] crosses)
    {
        var isShorter = false;
        for (var i = 1; i + 2 < stitches.Count; i++)
        {
            if (!cover.Knows(stitches[i].At) || IsNear(crosses, stitches[i].At) || IsNear(crosses, stitches[i + 1].At))
                continue;
            var (ends, begins) = Turn(stitches, i);
            if (
                (ends && IsFull(stitches[i].At, stitches[i - 1].At))
                || (begins && IsFull(stitches[i + 1].At, stitches[i + 2].At))
            )
                isShorter |= Shorten(stitches, i, block, ends, begins);
        }
        return isShorter;
    }

    /// <summary>Whether a row stays as it is there for a cross.</summary>
    internal static bool IsNear(Point[] crosses, Point hole)
    {
        foreach (var cross in crosses)
            if (cross.DistanceTo(hole) < NearCross)
                return true;
        return false;
    }

    /// <summary>Whether a row ends in a hole, and another one begins in the hole after it.</summary>
    private static (bool Ends, bool Begins) Turn(List<Stitch> stitches, int hole)
    {
        var (ends, begins) = (stitches[hole].Use == StitchUse.Fill, stitches[hole + 2].Use == StitchUse.Fill);
        return stitches[hole + 1].Use switch
        {
            StitchUse.Travel => (ends, begins),
            StitchUse.Fill when ends && begins && GoTheSameWay(stitches, (hole, hole - 1), (hole + 1, hole + 2)) => (
                true,
                true
            ),
            _ => (false, false),
        };
    }

    private static bool GoTheSameWay(List<Stitch> stitches, (int From, int To) one, (int From, int To) other)
    {
        var (a, b) = (
            Vector.Between(stitches[one.From].At, stitches[one.To].At),
            Vector.Between(stitches[other.From].At, stitches[other.To].At)
        );
        return Vector.Dot(a, b) > SameWay * a.Length * b.Length;
    }

    /// <summary>Too many layers are where a row ends, or a millimetre before.</summary>
    private bool IsFull(Point end, Point before) =>
        layers.LayersAt(end) > most
        || layers.LayersAt(end.Towards(before, Math.Min(1, Square.Side / end.DistanceTo(before)))) > most;

    /// <summary>
    /// Ends a row earlier, or begins the next one later, or both, where that makes fewest layers too many.
    /// </summary>
    /// <param name="hole">Where the row ends.</param>
    /// <returns>Whether it does.</returns>
    private bool Shorten(List<Stitch> stitches, int hole, int block, bool ends, bool begins)
    {
        List<End> ones = ends ? Earlier(stitches, hole, -1, block) : [new(stitches[hole].At, hole - 1)];
        List<End> twos = begins ? Earlier(stitches, hole + 1, 1, block) : [new(stitches[hole + 1].At, hole + 2)];
        var (first, last) = (ones[^1].Beside, twos[^1].Beside);
        var old = CollectionsMarshal.AsSpan(stitches)[first..(last + 1)].ToArray();
        Point[] places = [.. old.Select(s => s.At)];
        layers.Lay(places, -ThreadGrid.ThreadWidth);
        var (best, least) = (((End One, End Two, Point[] Way)?)null, layers.TooMany(places, most));
        // Thread on both sides of the turn makes no fewer too many than either by itself, all in all.
        long[] before = [.. ones.Select(one => layers.TooMany([.. places[..(one.Beside - first + 1)], one.At], most))];
        long[] after = [.. twos.Select(two => layers.TooMany([two.At, .. places[(two.Beside - first)..]], most))];
        for (var i = 0; i < ones.Count; i++)
        for (var k = 0; k < twos.Count && least > 0; k++)
        {
            var (one, two) = (ones[i], twos[k]);
            if (before[i] + after[k] >= least || one.At.DistanceTo(two.At) < StitchRules.Shortest)
                continue;
            Point[] way = [.. places[..(one.Beside - first + 1)], one.At, two.At, .. places[(two.Beside - first)..]];
            if (layers.TooMany(way, most) is var sum && sum < least && cover.IsSpare(one.At, two.At, block))
                (best, least) = ((one, two, way), sum);
        }
        layers.Lay(best?.Way ?? places, ThreadGrid.ThreadWidth);
        if (best is not { } turn)
            return false;
        Stitch[] shorter =
        [
            .. old[..(turn.One.Beside - first + 1)],
            stitches[hole] with
            {
                At = turn.One.At,
            },
            stitches[hole + 1] with
            {
                At = turn.Two.At,
            },
            .. old[(turn.Two.Beside - first)..],
        ];
        cover.Replace(block, old, shorter);
        stitches.RemoveRange(first, old.Length);
        stitches.InsertRange(first, shorter);
        return true;
    }

    /// <summary>The end of a row as it is, and earlier ones for as long as what lies beyond is hidden.</summary>
    /// <param name="step">Towards the other holes of the row.</param>
    private List<End> Earlier(List<Stitch> stitches, int end, int step, int block)
    {
        var ends = new List<End> { new(stitches[end].At, end + step) };
        while (ends.Count <= MostSteps)
        {
            var (at, hole) = ends[^1];
            var away = at.DistanceTo(stitches[hole].At);
            var isInHole = away < Step + StitchRules.Shortest;
            var to = isInHole ? stitches[hole].At : at.Towards(stitches[hole].At, Step / away).OnTape();
            if (!cover.IsSpare(at, to, block) || (isInHole && !GoesOn(stitches, hole, step)))
                break;
            ends.Add(new(to, isInHole ? hole + step : hole));
        }
        return ends;
    }

    /// <summary>The row has another hole beyond this one.</summary>
    private static bool GoesOn(List<Stitch> stitches, int hole, int step) =>
        hole + step >= 0
        && hole + step < stitches.Count
        && stitches[hole].Use == StitchUse.Fill
        && stitches[hole + step].Use == StitchUse.Fill
        && GoTheSameWay(stitches, (hole - step, hole), (hole, hole + step));
}
