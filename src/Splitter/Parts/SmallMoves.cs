using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter.Parts;

/// <summary>
/// The last resort where more thread lies than cloth and needle bear: needle holes move by so little that it does not
/// show, or below later stitches, and where a column turns in a point some of its stitches end short of it.
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

    /// <summary>What a cross is held against lies no farther from it, µm: parts overlap by a millimetre.</summary>
    private const int BesideCross = 1200;

    /// <summary>What moves makes room for others: so often hidden holes are gone through.</summary>
    private const int HiddenPasses = 4;

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
    private readonly double limit;
    private readonly GroundMap full;

    /// <param name="layers">Of the whole cloth; what is changed is counted there.</param>
    /// <param name="holes">The same of needle holes.</param>
    /// <param name="most">Layers that there should be.</param>
    /// <param name="limit">Layers that cloth and needle bear: no fewer.</param>
    internal SmallMoves(ThreadGrid layers, ThreadGrid holes, double most, double limit)
    {
        (this.layers, this.holes, this.most, this.limit) = (layers, holes, most, limit);
        full = new([
            [.. layers.Fuller(most).SelectMany(s => s.Quarters).Distinct()],
        ]);
    }

    /// <summary>Moves holes that were not moved so before.</summary>
    /// <param name="blocks">Of a part, in sewing order.</param>
    /// <param name="moved">Holes of the part.</param>
    /// <param name="crosses">Where those of later parts meet what the part sews: nothing goes farther away.</param>
    internal void Move(Block[] blocks, Round round, MovedHoles moved, Point[] crosses) =>
        Move(
            blocks,
            round.IsShorter ? (_, to) => moved.Short.Add(to) : moved.PutAside,
            (_, stitches, hole) =>
                !round.IsFor(stitches[hole].Use) || moved.Short.Contains(stitches[hole].At) ? []
                : round.IsShorter ? Earlier(stitches, hole, moved.Short)
                : moved.IsAside(stitches[hole].At) ? []
                : Beside(stitches[hole].At).Where(to => round.IsHidden || !IsFarther(stitches[hole].At, to, crosses))
        );

    /// <summary>
    /// Moves holes that later stitches hide, as far and as often as they do. Short stitches that are a tie stay: longer
    /// ones hold no thread.
    /// </summary>
    /// <inheritdoc cref="Move(Block[], Round, MovedHoles, Point[])"/>
    internal void MoveHidden(Block[] blocks, HiddenPlaces places, MovedHoles moved)
    {
        for (var pass = 0; pass < HiddenPasses; pass++)
            Move(
                blocks,
                moved.PutAside,
                (block, stitches, hole) =>
                    ShortTie.Rest(blocks[block]) is var rest && hole > rest.First && hole + 1 < rest.End
                        ? places.Of(block, stitches, hole)
                        : []
            );
    }

    /// <param name="put">Is told from where to where a hole is put.</param>
    /// <param name="places">Of a block, by its place in the part, for one of its holes.</param>
    private void Move(Block[] blocks, Action<Point, Point> put, Func<int, Stitch[], int, IEnumerable<Point>> places)
    {
        for (var i = 0; i < blocks.Length; i++)
            if (full.Meets(blocks[i].Bounds.Grown(ThreadGrid.ThreadWidth / 2)))
                blocks[i] = Moved(blocks[i], put, (stitches, hole) => places(i, stitches, hole));
    }

    private Block Moved(Block block, Action<Point, Point> put, Func<Stitch[], int, IEnumerable<Point>> places)
    {
        var (stitches, any) = (block.Stitches.ToArray(), false);
        for (var hole = 1; hole + 1 < stitches.Length; hole++)
            if (
                IsMovable(stitches[hole].Use)
                && IsMovable(stitches[hole + 1].Use)
                && IsNearFull(stitches, hole)
                && Better(stitches, hole, places(stitches, hole)) is { } better
            )
            {
                Count(stitches, hole, -1);
                holes.Close(stitches[hole].At);
                put(stitches[hole].At, better);
                stitches[hole] = stitches[hole] with { At = better };
                Count(stitches, hole, 1);
                holes.Pierce(better);
                any = true;
            }
        return any ? block with { Stitches = [.. stitches] } : block;
    }

    private static bool IsMovable(StitchUse use) => use is not (StitchUse.Tie or StitchUse.Mark);

    private bool IsNearFull(Stitch[] stitches, int hole) =>
        full.Meets(
            Box.Around([stitches[hole - 1].At, stitches[hole].At, stitches[hole + 1].At])
                .Grown(ThreadGrid.ThreadWidth / 2)
        );

    private static IEnumerable<Point> Beside(Point at) => Aside.Select(step => step.From(at));

    private static bool IsFarther(Point from, Point to, Point[] crosses) =>
        crosses.Any(cross => cross.DistanceTo(from) <= BesideCross && cross.DistanceTo(to) > cross.DistanceTo(from));

    /// <summary>
    /// Earlier ends of a column's stitches where those before and after them cover the edge; none where there are none.
    /// </summary>
    /// <param name="moved">Places of holes that lie short of the edge already.</param>
    private static IEnumerable<Point> Earlier(Stitch[] stitches, int hole, HashSet<Point> moved)
    {
        var (before, after) = (hole - 2, hole + 2);
        while (before >= 0 && moved.Contains(stitches[before].At))
            before -= 2;
        while (after < stitches.Length && moved.Contains(stitches[after].At))
            after += 2;
        if (
            before < 0
            || after >= stitches.Length
            || moved.Contains(stitches[hole - 1].At)
            || moved.Contains(stitches[hole + 1].At)
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
    /// How much less thread lies beyond what there should be with the hole at another place, µm²; none where another
    /// square becomes too full, or fuller than cloth bears.
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
        var more = layers.TooMany(change, most);
        return more >= 0 || Overfills(change, most) || Overfills(change, limit) ? 0 : -more;
    }

    /// <summary>Whether a square that has no more than so many layers would have more.</summary>
    private bool Overfills(ThreadChange change, double layersThere)
    {
        var borne = (long)Math.Round(layersThere * Units.SquareMillimetre);
        foreach (var (square, by) in change)
            if (layers.ThreadOn(square) is var lying && lying <= borne && lying + by > borne)
                return true;
        return false;
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
