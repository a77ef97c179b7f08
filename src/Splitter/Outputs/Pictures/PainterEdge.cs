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

    /// <summary>Where it crosses a scan line.</summary>
    internal int At(int line)
    {
        var down = (long)(line * Painter.LineStep) + (Painter.LineStep / 2) - top.Y;
        return top.X + (int)(down * (bottom.X - top.X) / (bottom.Y - top.Y));
    }

    /// <summary>
    /// The first line at a height or below. Scan line n lies at the middle of its step; an edge crosses it when top
    /// &lt;= middle &lt; bottom.
    /// </summary>
    private static int Ceiling(int y) => (int)Math.Ceiling((y - (Painter.LineStep / 2)) / (double)Painter.LineStep);
}
