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
        var found = new SortedDictionary<int, (int From, int To)>();
        for (var i = 0; i < outline.Length; i++)
        {
            var edge = new PainterEdge(outline[i] + down, outline[(i + 1) % outline.Length] + down);
            for (var line = edge.First; line < edge.End; line++)
            {
                var x = edge.At(line);
                var (from, to) = found.GetValueOrDefault(line, (x, x));
                found[line] = (Math.Min(from, x), Math.Max(to, x));
            }
        }
        return new(found.Keys.FirstOrDefault(), [.. found.Values]);
    }
}

/// <summary>Stretches of the lines from the first on, counted from the middle of a nib and from its line.</summary>
internal sealed record NibSpans(int First, ImmutableArray<(int From, int To)> Lines);
