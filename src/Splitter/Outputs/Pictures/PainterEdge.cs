using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>An edge of an outline, from the top; coordinates in 256ths of a pixel.</summary>
internal readonly struct PainterEdge
{
    private readonly Point top;
    private readonly Point bottom;

    internal PainterEdge(Point from, Point to)
    {
        Turn = from.Y < to.Y ? 1 : -1;
        (top, bottom) = Turn > 0 ? (from, to) : (to, from);
    }

    /// <summary>Whether it goes down, 1, or up, -1.</summary>
    internal int Turn { get; }

    /// <summary>The first scan line that it crosses, and the one after the last.</summary>
    internal int First => Ceiling(top.Y);
    internal int End => Ceiling(bottom.Y);

    /// <summary>
    /// Where it crosses scan lines from one on, as many as there is room for: quotients that are rounded towards its
    /// top, each found from the one before, since dividing is slow.
    /// </summary>
    internal void Cross(int line, Span<int> places)
    {
        long height = bottom.Y - top.Y;
        var (width, way) = (Math.Abs((long)bottom.X - top.X), bottom.X < top.X ? -1 : 1);
        var down = (long)(line * Painter.LineStep) + (Painter.LineStep / 2) - top.Y;
        var (aside, rest) = Math.DivRem(down * width, height);
        var (step, more) = Math.DivRem(Painter.LineStep * width, height);
        foreach (ref var place in places)
        {
            place = top.X + (way * (int)aside);
            (aside, rest) = (aside + step, rest + more);
            if (rest >= height)
                (aside, rest) = (aside + 1, rest - height);
        }
    }

    /// <summary>
    /// The first line at a height or below. Scan line n lies at the middle of its step; an edge crosses it when top
    /// &lt;= middle &lt; bottom.
    /// </summary>
    private static int Ceiling(int y) => (int)Math.Ceiling((y - (Painter.LineStep / 2)) / (double)Painter.LineStep);
}
