using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// The round end of a pen, whose stretches of scan lines are found once for each height at which it may stand between
/// two of them: a text has hundreds of ends.
/// </summary>
/// <param name="outline">Round its middle, convex.</param>
internal sealed class Nib(ImmutableArray<Point> outline)
{
    private readonly NibSpans?[] spans = new NibSpans?[Painter.LineStep];

    /// <param name="y">Of its middle.</param>
    internal NibSpans At(int y) => spans[y & (Painter.LineStep - 1)] ??= Found(y & (Painter.LineStep - 1));

    private NibSpans Found(int y)
    {
        var down = new Point(0, y);
        ImmutableArray<PainterEdge> edges =
        [
            .. outline.Select((point, i) => new PainterEdge(point + down, outline[(i + 1) % outline.Length] + down)),
        ];
        var first = edges.Min(e => e.First);
        var found = new (int From, int To)[edges.Max(e => e.End) - first];
        Array.Fill(found, (int.MaxValue, int.MinValue));
        var places = new int[found.Length];
        foreach (var edge in edges)
        {
            // Level ones cross none: a very thin pen has such.
            if (edge.First >= edge.End)
                continue;
            var crossed = places.AsSpan(0, edge.End - edge.First);
            edge.Cross(edge.First, crossed);
            for (var i = 0; i < crossed.Length; i++)
            {
                ref var line = ref found[edge.First - first + i];
                line = (Math.Min(line.From, crossed[i]), Math.Max(line.To, crossed[i]));
            }
        }
        return new(first, [.. found]);
    }
}

/// <summary>Stretches of the lines from the first on, counted from the middle of a nib and from its line.</summary>
internal sealed record NibSpans(int First, ImmutableArray<(int From, int To)> Lines);
