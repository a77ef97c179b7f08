using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Stitching;

/// <summary>
/// Fastens the thread at both ends of a path. The needle comes in a short stitch along the path, sews one on and two
/// back to where the path begins, and then the path over them; at the end two back along the path and one to. Ties lie
/// on the path's own stitches, under the thread that follows or went before, and never show beside it; their holes are
/// spread.
/// </summary>
internal static class Ties
{
    /// <summary>Length of a tie stitch, µm. Common practice, no source: 0.6 to 0.8 mm.</summary>
    private const int TieStitch = 700;

    /// <summary>The same where there is no room, µm. Common practice, no source: 0.4 to 0.5 mm.</summary>
    private const int SmallTieStitch = 500;

    private static readonly ImmutableArray<int> Lengths = [TieStitch, SmallTieStitch];

    /// <summary>Penetrations of a tie before the path begins, and after it has ended.</summary>
    private const int AtStart = 3,
        AtEnd = 3;

    /// <summary>
    /// Longest stitch of a way that later thread hides, µm: longer ones would lift what is sewn over them. Common
    /// practice, no source.
    /// </summary>
    internal const double HiddenStitch = 3 * Units.Millimetre;

    /// <summary>
    /// The path as one tied block, brought to keep to <see cref="StitchRules"/> first; null when nothing is left that
    /// could be sewn.
    /// </summary>
    /// <param name="of">Id of the shape.</param>
    internal static Block? Fasten(string of, IEnumerable<Stitch> path)
    {
        var stitches = StitchRules.Sewable(path);
        if (stitches.Length < 2)
            return null;
        return new(of, Tied(stitches, atStart: true, atEnd: true));
    }

    /// <summary>The path tied at its ends, or at one of them, and else as it is; a lone hole cannot be tied.</summary>
    internal static ImmutableArray<Stitch> Tied(ImmutableArray<Stitch> path, bool atStart, bool atEnd)
    {
        if (path.Length < 2)
            return path;
        var (one, two) = Along([.. path.Take(3).Select(s => s.At)]);
        var (last, before) = Along([.. path.Reverse().Take(3).Select(s => s.At)]);
        IEnumerable<Stitch> tied = atStart
            ? [.. Holes(one, two, one), path[0] with { Use = StitchUse.Tie }]
            : [path[0]];
        return [.. tied, .. path.Skip(1), .. atEnd ? Holes(last, before, last) : []];
    }

    /// <summary>
    /// Two tied blocks as one stretch of thread: the first ends with the way to where the second begins, and neither is
    /// tied there.
    /// </summary>
    /// <param name="way">From the end of the first one's path to the start of the second one's.</param>
    internal static (Block First, Block Second) Joined(Block first, ImmutableArray<Point> way, Block second) =>
        (
            first with
            {
                Stitches = [.. first.Stitches[..^AtEnd], .. Hidden(way).Skip(1)],
            },
            second with
            {
                Stitches = second.Stitches[AtStart..],
            }
        );

    /// <summary>Stitches along a way that later thread hides, from its start.</summary>
    internal static ImmutableArray<Stitch> Hidden(ImmutableArray<Point> way) =>
        StitchRules.Split(StitchRules.Thinned(way.Select(p => new Stitch(p, StitchUse.Travel))), HiddenStitch);

    /// <summary>Where the path of a tied block ends.</summary>
    internal static Point PathEnd(Block block) => block.Stitches[^(AtEnd + 1)].At;

    /// <summary>Where the path of a tied block begins.</summary>
    internal static Point PathStart(Block block) => block.Stitches[AtStart].At;

    /// <summary>The tie at the start of a block's path, up to its first hole.</summary>
    internal static ImmutableArray<Point> AtStartOf(Block block) =>
        [.. block.Stitches[..(AtStart + 1)].Select(s => s.At)];

    /// <summary>The tie at the end of a block's path, from its last hole.</summary>
    internal static ImmutableArray<Point> AtEndOf(Block block) => [.. block.Stitches[^(AtEnd + 1)..].Select(s => s.At)];

    /// <summary>The path from its first hole, without the tie there.</summary>
    internal static ImmutableArray<Stitch> FromStart(Block block) => block.Stitches[AtStart..];

    /// <summary>The path up to its last hole, without the tie there.</summary>
    internal static ImmutableArray<Stitch> UpToEnd(Block block) => block.Stitches[..^AtEnd];

    /// <summary>Whether the path is fastened where it begins, by a tie of ours.</summary>
    internal static bool IsTiedAtStart(Block block) =>
        block.IsTied.Start && block.Stitches.Length > AtStart && block.Stitches[..AtStart].All(IsTie);

    /// <summary>Whether the path is fastened where it ends, by a tie of ours.</summary>
    internal static bool IsTiedAtEnd(Block block) =>
        block.IsTied.End && block.Stitches.Length > AtEnd && block.Stitches[^AtEnd..].All(IsTie);

    /// <summary>
    /// Ways to tie where the path begins, up to its first hole: as it is, and with as many stitches spread over the
    /// first of the path, or all in one place, or over rows of a narrow tip.
    /// </summary>
    internal static IEnumerable<ImmutableArray<Point>> Starts(Block block)
    {
        yield return AtStartOf(block);
        // Mostly that will do, and the path is not gone through.
        ImmutableArray<Point> path = [.. block.Stitches.Skip(AtStart).Select(s => s.At)];
        foreach (var length in Lengths)
            if (Spread(path, length) is { } along)
            {
                yield return [along[2], along[1], along[0], path[0]];
                yield return [along[0], path[0], along[0], path[0]];
            }
        if (Leaping(path) is { } leaps)
            yield return [leaps[2], leaps[1], leaps[0], path[0]];
    }

    /// <summary>The same where it ends, from its last hole.</summary>
    internal static IEnumerable<ImmutableArray<Point>> Ends(Block block)
    {
        yield return AtEndOf(block);
        // Mostly that will do, and the path is not gone through.
        ImmutableArray<Point> path = [.. block.Stitches.SkipLast(AtEnd).Reverse().Select(s => s.At)];
        foreach (var length in Lengths)
            if (Spread(path, length) is { } along)
            {
                yield return [path[0], .. along];
                yield return [path[0], along[0], path[0], along[0]];
            }
        if (Leaping(path) is { } leaps)
            yield return [path[0], .. leaps];
    }

    /// <summary>A tie straight away from where the path ends.</summary>
    internal static ImmutableArray<Point> Straight(Point end, Vector unit, bool isSmall = false) =>
        [
            .. Enumerable
                .Range(0, AtEnd + 1)
                .Select(i => i == 0 ? end : (unit * (i * (isSmall ? SmallTieStitch : TieStitch))).From(end).OnTape()),
        ];

    internal static Block WithStart(Block block, ImmutableArray<Point> tie) =>
        block with
        {
            Stitches = [.. Holes(tie), .. block.Stitches.Skip(AtStart + 1)],
        };

    internal static Block WithEnd(Block block, ImmutableArray<Point> tie) =>
        block with
        {
            Stitches = [.. block.Stitches.SkipLast(AtEnd), .. Holes(tie.Skip(1))],
        };

    private static bool IsTie(Stitch stitch) => stitch.Use == StitchUse.Tie;

    /// <summary>As many holes along a path as a tie has; null where it is too short.</summary>
    private static ImmutableArray<Point>? Spread(ImmutableArray<Point> path, int length)
    {
        var places = ImmutableArray.CreateBuilder<Point>(AtEnd);
        for (var (i, away) = (1, length); i < path.Length && places.Count < AtEnd; )
        {
            places.Add(Beside(path[i - 1], path[i], away));
            (i, away) = places[^1] == path[i] ? (i + 1, length) : (i, away + length);
        }
        return places.Count == AtEnd ? places.ToImmutable() : null;
    }

    /// <summary>
    /// As many holes, each the last in a row of the path's that is no further off than a tie stitch reaches: where
    /// short rows go to and fro, a tie that keeps to the path stays where it is.
    /// </summary>
    private static ImmutableArray<Point>? Leaping(ImmutableArray<Point> path)
    {
        var places = ImmutableArray.CreateBuilder<Point>(AtEnd);
        for (int i = 0, next = 0; places.Count < AtEnd; i = next)
        {
            while (next + 1 < path.Length && path[i].DistanceTo(path[next + 1]) < TieStitch + StitchRules.Shortest)
                next++;
            if (path[i].DistanceTo(path[next]) < StitchRules.Shortest)
                return null;
            places.Add(path[next]);
        }
        return places.ToImmutable();
    }

    private static IEnumerable<Stitch> Holes(params IEnumerable<Point> places) =>
        places.Select(p => new Stitch(p, StitchUse.Tie));

    /// <summary>
    /// Two places along a path from its end, each a tie stitch on, or in a hole rather than right before it.
    /// </summary>
    private static (Point One, Point Two) Along(ImmutableArray<Point> path)
    {
        var one = Beside(path[0], path[1], TieStitch);
        var two =
            one != path[1] ? Beside(path[0], path[1], 2 * TieStitch)
            : path.Length > 2 ? Beside(path[1], path[2], TieStitch)
            : path[0];
        return (one, two);
    }

    /// <summary>So far from one hole towards the next one, or in that one rather than right before it.</summary>
    internal static Point Beside(Point from, Point hole, int away)
    {
        var length = from.DistanceTo(hole);
        return length < away + StitchRules.Shortest ? hole : from.Towards(hole, away / length).OnTape();
    }
}
