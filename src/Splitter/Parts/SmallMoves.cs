using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter.Parts;

/// <summary>
/// The last resort where more thread lies than cloth and needle bear: needle holes move by so little that it does not
/// show, and where a column turns in a point some of its stitches end short of it.
/// </summary>
internal sealed class SmallMoves
{
    /// <summary>
    /// How far thread that shows may move, µm: a quarter of its width, and a step of the tape.
    /// </summary>
    private const int Step = (int)Relief.ShownMove;

    private static readonly ImmutableArray<Vector> Aside = [new(Step, 0), new(-Step, 0), new(0, Step), new(0, -Step)];

    /// <summary>
    /// How much shorter a column's stitch becomes, as shares of it: more shows as a furrow. Common practice, no source:
    /// up to half.
    /// </summary>
    private static readonly ImmutableArray<double> Shorter = [0.25, 0.5];

    /// <summary>
    /// Stitches of a column that end no further apart on an edge cover it without those between them, µm: a little more
    /// than a thread's width.
    /// </summary>
    private const int Covered = 500;

    /// <summary>What is tried one after the other: first what shows least.</summary>
    internal static readonly ImmutableArray<Round> Rounds =
    [
        new(IsHidden: true, IsColumn: false, IsShorter: false),
        new(IsHidden: false, IsColumn: false, IsShorter: false),
        new(IsHidden: false, IsColumn: true, IsShorter: false),
        new(IsHidden: false, IsColumn: true, IsShorter: true),
    ];

    /// <param name="IsHidden">Travel and underlay; else what shows.</param>
    /// <param name="IsColumn">Columns; else rows and lines.</param>
    /// <param name="IsShorter">Stitches end earlier; else holes move a step.</param>
    internal readonly record struct Round(bool IsHidden, bool IsColumn, bool IsShorter)
    {
        internal bool IsFor(StitchUse use) =>
            use switch
            {
                StitchUse.Travel or StitchUse.Underlay => IsHidden,
                StitchUse.Fill or StitchUse.Run => !IsHidden && !IsColumn,
                StitchUse.Satin => IsColumn,
                _ => false,
            };
    }

    private readonly ThreadGrid layers;
    private readonly ThreadGrid holes;
    private readonly double most;
    private readonly long borne;
    private readonly GroundMap full;

    /// <param name="layers">Of the whole cloth; what is changed is counted there.</param>
    /// <param name="holes">The same of needle holes.</param>
    /// <param name="most">Layers that cloth and needle bear.</param>
    internal SmallMoves(ThreadGrid layers, ThreadGrid holes, double most)
    {
        (this.layers, this.holes, this.most, borne) = (
            layers,
            holes,
            most,
            (long)Math.Round(most * Units.SquareMillimetre)
        );
        full = new([
            [.. layers.Fuller(most).SelectMany(s => s.Quarters).Distinct()],
        ]);
    }

    /// <param name="blocks">Of a part, in sewing order.</param>
    internal void Move(Block[] blocks, Round round)
    {
        for (var i = 0; i < blocks.Length; i++)
            if (full.Meets(blocks[i].Bounds.Grown(ThreadGrid.ThreadWidth / 2)))
                blocks[i] = Moved(blocks[i], round);
    }

    private Block Moved(Block block, Round round)
    {
        var (stitches, moved) = (block.Stitches.ToArray(), new HashSet<int>());
        for (var hole = 1; hole + 1 < stitches.Length; hole++)
            if (
                round.IsFor(stitches[hole].Use)
                && IsMovable(stitches[hole + 1].Use)
                && IsNearFull(stitches, hole)
                && Better(stitches, hole, round.IsShorter ? Earlier(stitches, hole, moved) : Beside(stitches[hole].At))
                    is { } better
            )
            {
                Count(stitches, hole, -1);
                holes.Close(stitches[hole].At);
                stitches[hole] = stitches[hole] with { At = better };
                Count(stitches, hole, 1);
                holes.Pierce(better);
                moved.Add(hole);
            }
        return moved.Count == 0 ? block : block with { Stitches = [.. stitches] };
    }

    private static bool IsMovable(StitchUse use) => Rounds.Any(round => round.IsFor(use));

    private bool IsNearFull(Stitch[] stitches, int hole) =>
        full.Meets(
            Box.Around([stitches[hole - 1].At, stitches[hole].At, stitches[hole + 1].At])
                .Grown(ThreadGrid.ThreadWidth / 2)
        );

    private static IEnumerable<Point> Beside(Point at) => Aside.Select(step => step.From(at));

    /// <summary>
    /// Earlier ends of a column's stitches where those before and after them cover the edge; none where there are none.
    /// </summary>
    /// <param name="moved">Holes that lie short of the edge already.</param>
    private static IEnumerable<Point> Earlier(Stitch[] stitches, int hole, HashSet<int> moved)
    {
        var (before, after) = (hole - 2, hole + 2);
        while (moved.Contains(before))
            before -= 2;
        if (
            before < 0
            || after >= stitches.Length
            || moved.Contains(hole - 1)
            || stitches[before..(after + 1)].Any(s => s.Use != StitchUse.Satin)
            || stitches[before].At.DistanceTo(stitches[after].At) > Covered
        )
            return [];
        var across = stitches[hole - 1].At.Towards(stitches[hole + 1].At, 0.5);
        return Shorter.Select(share => stitches[hole].At.Towards(across, share).OnTape());
    }

    /// <summary>The place of a hole that makes fewest layers too many, if it is another one.</summary>
    private Point? Better(Stitch[] stitches, int hole, IEnumerable<Point> places)
    {
        var (best, worth) = ((Point?)null, 0L);
        foreach (var place in places)
            if (IsSewable(stitches, hole, place) && Saved(stitches, hole, place) is var saved && saved > worth)
                (best, worth) = (place, saved);
        return best;
    }

    /// <summary>
    /// Both stitches are neither too short nor longer than any hidden one but for what they were, and the cloth bears
    /// the hole.
    /// </summary>
    private bool IsSewable(Stitch[] stitches, int hole, Point place)
    {
        var old = stitches[hole].At;
        foreach (var beside in (ReadOnlySpan<Point>)[stitches[hole - 1].At, stitches[hole + 1].At])
            if (
                beside.DistanceTo(place) is var length
                && (length < StitchRules.Shortest || length > Math.Max(Ties.HiddenStitch, beside.DistanceTo(old)))
            )
                return false;
        return Quarter.At(place) == Quarter.At(old) || holes.HolesAt(place) < ThreadGrid.MostHoles;
    }

    /// <summary>
    /// How much less thread lies beyond what cloth bears with the hole at another place, µm²; none where another square
    /// becomes too full.
    /// </summary>
    private long Saved(Stitch[] stitches, int hole, Point place)
    {
        var old = stitches[hole].At;
        var change = new ThreadChange(
            Box.Around([stitches[hole - 1].At, old, place, stitches[hole + 1].At]),
            stackalloc long[ThreadChange.FewQuarters]
        );
        foreach (var (from, to, breadth) in Thread(stitches, hole, old))
            change.Lay(from, to, -breadth);
        foreach (var (from, to, breadth) in Thread(stitches, hole, place))
            change.Lay(from, to, breadth);
        foreach (var (square, by) in change)
        {
            var lying = layers.ThreadOn(square);
            if (lying <= borne && lying + by > borne)
                return 0;
        }
        return -layers.TooMany(change, most);
    }

    private void Count(Stitch[] stitches, int hole, int sign)
    {
        foreach (var (from, to, breadth) in Thread(stitches, hole, stitches[hole].At))
            layers.Lay(from, to, sign * breadth);
    }

    /// <summary>To a hole at a place and on from there.</summary>
    private static (Point From, Point To, int Breadth)[] Thread(Stitch[] stitches, int hole, Point at) =>
        [
            (stitches[hole - 1].At, at, ClothLayers.Breadth(stitches[hole].Use)),
            (at, stitches[hole + 1].At, ClothLayers.Breadth(stitches[hole + 1].Use)),
        ];
}
