using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter.Parts;

/// <summary>
/// Rows that later stitches hide end earlier where more thread lies than cloth and needle bear: of rims and overlaps
/// under other shapes as much is left out as makes too many layers, and what hides it covers the cloth.
/// </summary>
/// <param name="cover">What lies over each other.</param>
/// <param name="part">Whose rows.</param>
/// <param name="met">Crosses of later parts that should meet what this one sews: rows stay as they are there.</param>
/// <param name="layers">Of the whole cloth; what is changed is counted there.</param>
/// <param name="most">Layers that cloth and needle bear.</param>
internal sealed class RowEnds(
    RowCover cover,
    int part,
    ILookup<string, Point> met,
    ThreadGrid layers,
    int most
)
{
    /// <summary>Ends are tried this far apart, µm: a thread's width.</summary>
    private const int Step = ThreadGrid.ThreadWidth;

    /// <summary>How many steps earlier a row may end: 2 mm, more than a rim and an overlap.</summary>
    private const int MostSteps = 5;

    /// <summary>Thread is followed in steps of this, µm, to see whether all of it is hidden.</summary>
    private const double Stride = 200;

    /// <summary>Stitches run the same way if the cosine of the angle between them is more: some 35 degrees.</summary>
    private const double SameWay = 0.8;

    /// <summary>Rows this near to a cross stay, µm: as far as they might end earlier, and its arm.</summary>
    private const int NearCross = (MostSteps * Step) + AlignmentStitch.Arm;

    /// <summary>Where a row may end, and the hole of it that comes next before that.</summary>
    private readonly record struct End(Point At, int Beside);

    /// <summary>Shortens rows of all parts, the first that is sewn first.</summary>
    /// <param name="parts">The blocks of each in sewing order, with what they hide.</param>
    /// <param name="crosses">Of all parts.</param>
    internal static void Shorten(
        ImmutableArray<(Block[] Blocks, HiddenGround Ground)> parts,
        ImmutableArray<AlignmentStitch> crosses,
        ThreadGrid layers,
        int most
    )
    {
        var cover = new RowCover([.. parts.Select(p => p.Blocks)], layers, most);
        for (var part = 0; part < parts.Length; part++)
        {
            var blocks = parts[part].Blocks;
            var met = crosses
                .Where(cross => cross.With == part)
                .ToLookup(cross => cross.On, cross => cross.At, StringComparer.Ordinal);
            var ends = new RowEnds(cover, part, met, layers, most);
            for (var i = 0; i < blocks.Length; i++)
                blocks[i] = ends.Shortened(blocks[i], cover.First(part) + i);
        }
    }

    /// <summary>The block with rows that end earlier.</summary>
    /// <param name="next">Number of the stitch after the block: this one and later ones hide it.</param>
    private Block Shortened(Block block, int next)
    {
        var (stitches, isShorter) = (block.Stitches.ToList(), false);
        Point[] crosses = [.. met[block.Of]];
        for (var i = 1; i + 2 < stitches.Count; i++)
        {
            if (crosses.Any(cross => cross.DistanceTo(stitches[i].At) < NearCross))
                continue;
            var (ends, begins) = Turn(stitches, i);
            if (
                (ends && IsFull(stitches[i].At, stitches[i - 1].At))
                || (begins && IsFull(stitches[i + 1].At, stitches[i + 2].At))
            )
                isShorter |= Shorten(stitches, i, next, ends, begins);
        }
        return isShorter ? block with { Stitches = [.. stitches] } : block;
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
        layers.LayersOn(Square.At(end)) > most
        || layers.LayersOn(Square.At(end.Towards(before, Math.Min(1, Square.Side / end.DistanceTo(before))))) > most;

    /// <summary>
    /// Ends a row earlier, or begins the next one later, or both, where that makes fewest layers too many.
    /// </summary>
    /// <param name="hole">Where the row ends.</param>
    /// <returns>Whether it does.</returns>
    private bool Shorten(List<Stitch> stitches, int hole, int next, bool ends, bool begins)
    {
        List<End> ones = ends ? Earlier(stitches, hole, -1, next) : [new(stitches[hole].At, hole - 1)];
        List<End> twos = begins ? Earlier(stitches, hole + 1, 1, next) : [new(stitches[hole + 1].At, hole + 2)];
        var (first, last) = (ones[^1].Beside, twos[^1].Beside);
        var old = stitches[first..(last + 1)];
        var best = old;
        Count(old, -ThreadGrid.ThreadWidth);
        var least = TooMany(old);
        foreach (var one in ones)
        foreach (var two in twos)
        {
            if (one.At.DistanceTo(two.At) < StitchRules.Shortest || !IsHidden(one.At, two.At, next))
                continue;
            List<Stitch> way =
            [
                .. stitches[first..(one.Beside + 1)],
                stitches[hole] with
                {
                    At = one.At,
                },
                stitches[hole + 1] with
                {
                    At = two.At,
                },
                .. stitches[two.Beside..(last + 1)],
            ];
            if (TooMany(way) is var sum && sum < least)
                (best, least) = (way, sum);
        }
        Count(best, ThreadGrid.ThreadWidth);
        if (best != old)
        {
            cover.TakeUp(next, [.. old]);
            cover.Lay(next, [.. best]);
        }
        stitches.RemoveRange(first, old.Count);
        stitches.InsertRange(first, best);
        return best != old;
    }

    /// <summary>The end of a row as it is, and earlier ones for as long as what lies beyond is hidden.</summary>
    /// <param name="step">Towards the other holes of the row.</param>
    private List<End> Earlier(List<Stitch> stitches, int end, int step, int next)
    {
        var ends = new List<End> { new(stitches[end].At, end + step) };
        while (ends.Count <= MostSteps)
        {
            var (at, hole) = ends[^1];
            var away = at.DistanceTo(stitches[hole].At);
            var isInHole = away < Step + StitchRules.Shortest;
            var to = isInHole ? stitches[hole].At : at.Towards(stitches[hole].At, Step / away).OnTape();
            if (!IsHidden(at, to, next) || (isInHole && !GoesOn(stitches, hole, step)))
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

    private bool IsHidden(Point from, Point to, int next)
    {
        var count = Math.Max(1, (int)Math.Ceiling(from.DistanceTo(to) / Stride));
        for (var k = 0; k <= count; k++)
            if (!IsHidden(from.Towards(to, (double)k / count), next))
                return false;
        return true;
    }

    /// <summary>
    /// The part itself hides what lies a thread's width inside; another one, which may lie a little off, what lies a
    /// cell inside.
    /// </summary>
    private bool IsHidden(Point at, int next)
    {
        return cover.Covers(at, next, part);
    }

    private double TooMany(List<Stitch> way) => layers.TooMany([.. way.Select(s => s.At)], most);

    private void Count(List<Stitch> way, int breadth) => layers.Lay([.. way.Select(s => s.At)], breadth);
}
