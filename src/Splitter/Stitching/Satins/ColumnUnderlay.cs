using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Recipes;
using Splitter.Stitching.Runs;

namespace Splitter.Stitching.Satins;

/// <summary>What is sewn on a column before it is covered: underlay, which is also the hidden way along it.</summary>
internal static class ColumnUnderlay
{
    /// <summary>Longest stitch below a satin, µm. Common practice, no source: 2 to 3 mm.</summary>
    internal const double RunStitch = 2500;

    /// <summary>How far underlay stays inside the edge, µm. Common practice, no source: 0.4 to 0.8 mm.</summary>
    private const double Inset = 600;

    /// <summary>Distance of penetrations along one edge of an open zigzag, µm. Common practice, no source.</summary>
    internal const double OpenSpacing = 3000;

    /// <summary>The narrowest column with room for a run along each edge, µm.</summary>
    internal const double NarrowestEdged = 2 * Inset + 600;

    /// <summary>
    /// The way out from one place to another: along the middle, or an open zigzag if the column is to have one.
    /// </summary>
    internal static IEnumerable<Stitch> Out(
        ColumnLine column,
        double from,
        double to,
        ImmutableArray<UnderlayKind> kinds
    ) =>
        Along(
            kinds.Contains(UnderlayKind.Cross)
                ? Open(column, from, to)
                : [.. column.Places(from, to).Select(p => column.At(p).Middle)]
        );

    /// <summary>A run out along one edge and back along the other, where there is room and it is asked for.</summary>
    internal static IEnumerable<Stitch> Edges(
        ColumnLine column,
        double from,
        double to,
        ImmutableArray<UnderlayKind> kinds
    ) =>
        !kinds.Contains(UnderlayKind.Edge) || column.MeanWidth < NarrowestEdged
            ? []
            : Along([
                .. column.Places(from, to).Select(p => Inside(column, p, left: true)),
                .. column.Places(to, from).Select(p => Inside(column, p, left: false)),
            ]);

    private static ImmutableArray<Point> Open(ColumnLine column, double from, double to)
    {
        var count = Math.Max(1, (int)Math.Ceiling(Math.Abs(to - from) / (OpenSpacing / 2)));
        return
        [
            .. Enumerable
                .Range(0, count + 1)
                .Select(k => Inside(column, from + ((to - from) * k / count), left: (k & 1) == 0)),
        ];
    }

    private static Point Inside(ColumnLine column, double place, bool left)
    {
        var rung = column.At(place);
        var share = rung.Width <= 2 * Inset ? 0.5 : Inset / rung.Width;
        return left ? rung.Left.Towards(rung.Right, share) : rung.Right.Towards(rung.Left, share);
    }

    private static IEnumerable<Stitch> Along(ImmutableArray<Point> points)
    {
        ImmutableArray<Point> distinct = [.. points.Where((p, i) => i == 0 || p != points[i - 1])];
        return (distinct.Length < 2 ? distinct : EvenRun.Along(distinct, RunStitch)).Select(p => new Stitch(
            p,
            StitchUse.Underlay
        ));
    }
}
