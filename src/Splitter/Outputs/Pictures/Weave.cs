using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// Cloth in plain weave, hardly more than a hint: squares of half a millimetre, every other one a little darker,
/// counted from the page's corner.
/// </summary>
internal static class Weave
{
    /// <summary>µm; two are a whole millimetre, which has whole pixels.</summary>
    private const int Square = 500;

    /// <summary>Percent of black in the darker squares.</summary>
    private const int Depth = 3;

    internal static void Define(TextBytes svg)
    {
        var (square, whole) = (SvgWriter.Tenths(Square), SvgWriter.Tenths(2 * Square));
        svg.Add($"<pattern id=\"weave\" width=\"{whole}\" height=\"{whole}\" patternUnits=\"userSpaceOnUse\">")
            .Add($"<path fill=\"#000\" fill-opacity=\".{Depth:00}\" ")
            .Add($"d=\"M0 0h{square}v{whole}h{square}v-{square}h-{whole}z\"/></pattern>\n");
    }

    internal static void Write(TextBytes svg, PaintedCloth cloth)
    {
        var box = cloth.Box;
        foreach (var fill in (ReadOnlySpan<string>)[$"{cloth.Colour}", "url(#weave)"])
        {
            svg.Add($"<path fill=\"{fill}\" d=\"");
            SvgWriter.Path(svg, [.. Region.Of(box).Rings.Select(r => r.Points)], "z");
            svg.Add("\"/>\n");
        }
    }

    internal static void Paint(Painter painter, PixelScale scale, PaintedCloth cloth)
    {
        var (from, to) = (
            scale.Of(new Point(cloth.Box.Left, cloth.Box.Top)),
            scale.Of(new Point(cloth.Box.Right, cloth.Box.Bottom))
        );
        painter.AddConvex([from, new(to.X, from.Y), to, new(from.X, to.Y)]);
        painter.Paint(cloth.Colour, 100);
        var (left, top) = (from.X / Painter.Fraction, from.Y / Painter.Fraction);
        var columns = Even(left, to.X / Painter.Fraction, scale);
        var rows = Even(top, to.Y / Painter.Fraction, scale);
        byte[][] darker = [.. Enumerable.Range(0, (Samples * Samples) + 1).Select(Darker)];
        // The first row may be cloth in part only; of all others those are the same that lie alike on the squares.
        var drawn = new int[Samples + 1];
        for (var y = 0; y < rows.Length; y++)
        {
            ref var same = ref drawn[rows[y]];
            if (same > 0)
            {
                painter.Repeat(left, columns.Length, top + same, top + y);
                continue;
            }
            for (var x = 0; x < columns.Length; x++)
            {
                var dark = (columns[x] * rows[y]) + ((Samples - columns[x]) * (Samples - rows[y]));
                if (dark > 0)
                    painter.Shade(left + x, top + y, darker[dark]);
            }
            same = y;
        }
    }

    /// <param name="dark">How many of a pixel's places lie in darker squares.</param>
    private static byte[] Darker(int dark)
    {
        const int Whole = 100 * Samples * Samples;
        var shades = new byte[256];
        for (var shade = 0; shade < shades.Length; shade++)
            shades[shade] = (byte)(((shade * (Whole - (Depth * dark))) + (Whole / 2)) / Whole);
        return shades;
    }

    /// <summary>Places in a pixel that are looked at, from side to side.</summary>
    private const int Samples = 8;

    /// <summary>For each pixel how many of its places lie in even squares.</summary>
    private static int[] Even(int first, int end, PixelScale scale)
    {
        var even = new int[end - first];
        for (var i = 0; i < even.Length; i++)
        for (var k = 0; k < Samples; k++)
        {
            var place = (2L * (((first + i) * Samples) + k) + 1) * scale.Micrometres / (2L * Samples * scale.Pixels);
            even[i] += place / Square % 2 == 0 ? 1 : 0;
        }
        return even;
    }
}
