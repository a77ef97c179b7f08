using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// Fills outlines by scan lines, several to a row of pixels, with exact ends on each: smooth edges from whole numbers
/// alone, so that every machine gets the same pixels. Coordinates in 256ths of a pixel.
/// </summary>
internal sealed class Painter(int width, int height, byte[] pixels)
{
    /// <summary>Parts of a pixel that coordinates count.</summary>
    internal const int Fraction = 256;

    /// <summary>Scan lines of a row of pixels: level edges get as many shades.</summary>
    private const int LinesPerRow = 8;

    private const int LineStep = Fraction / LinesPerRow;

    /// <summary>Of a pixel that is covered wholly.</summary>
    private const int Full = Fraction * LinesPerRow;

    /// <summary>
    /// Where an outline crosses a scan line: one more turn around what lies to the right, or one less.
    /// </summary>
    private readonly record struct Crossing(int Line, int X, int Turn) : IComparable<Crossing>
    {
        public int CompareTo(Crossing other) => Line != other.Line ? Line.CompareTo(other.Line) : X.CompareTo(other.X);
    }

    private readonly List<Crossing> crossings = [];

    /// <summary>Of the row that is painted; zero between rows.</summary>
    private readonly int[] cover = new int[width];

    /// <summary>Adds a closed outline to what the next paint fills.</summary>
    internal void Add(ReadOnlySpan<Point> outline)
    {
        for (var i = 0; i < outline.Length; i++)
            Add(outline[i], outline[(i + 1) % outline.Length]);
    }

    private void Add(Point from, Point to)
    {
        if (from.Y == to.Y)
            return;
        var turn = from.Y < to.Y ? 1 : -1;
        var (top, bottom) = turn > 0 ? (from, to) : (to, from);
        // Scan line n lies at the middle of its step; it is crossed when top <= middle < bottom.
        var first = Math.Max(0, Ceiling(top.Y - (LineStep / 2)));
        var last = Math.Min(height * LinesPerRow, Ceiling(bottom.Y - (LineStep / 2)));
        for (var line = first; line < last; line++)
        {
            var down = (long)(line * LineStep) + (LineStep / 2) - top.Y;
            crossings.Add(new(line, top.X + (int)(down * (bottom.X - top.X) / (bottom.Y - top.Y)), turn));
        }
    }

    private static int Ceiling(int y) => (int)Math.Ceiling(y / (double)LineStep);

    /// <summary>Fills what was added, by the non-zero rule, and forgets it.</summary>
    internal void Paint(Colour colour, int opacity)
    {
        crossings.Sort();
        for (var i = 0; i < crossings.Count; )
        {
            var row = crossings[i].Line / LinesPerRow;
            var (left, right) = (width, 0);
            for (; i < crossings.Count && crossings[i].Line / LinesPerRow == row; )
            {
                var (line, turns) = (crossings[i].Line, 0);
                for (; i < crossings.Count && crossings[i].Line == line; i++)
                {
                    if (turns != 0)
                        Cover(crossings[i - 1].X, crossings[i].X, ref left, ref right);
                    turns += crossings[i].Turn;
                }
            }
            Blend(row, left, right, colour, opacity);
        }
        crossings.Clear();
    }

    /// <summary>A share of black on one pixel.</summary>
    internal void Darken(int x, int y, int share, int whole)
    {
        foreach (ref var value in pixels.AsSpan(((y * width) + x) * 3, 3))
            value = (byte)(((value * (whole - share)) + (whole / 2)) / whole);
    }

    private void Cover(int from, int to, ref int left, ref int right)
    {
        from = Math.Clamp(from, 0, width * Fraction);
        to = Math.Clamp(to, 0, width * Fraction);
        if (from >= to)
            return;
        var (first, last) = (from / Fraction, (to - 1) / Fraction);
        left = Math.Min(left, first);
        right = Math.Max(right, last + 1);
        if (first == last)
        {
            cover[first] += to - from;
            return;
        }
        cover[first] += ((first + 1) * Fraction) - from;
        for (var x = first + 1; x < last; x++)
            cover[x] += Fraction;
        cover[last] += to - (last * Fraction);
    }

    private void Blend(int row, int left, int right, Colour colour, int opacity)
    {
        const int Whole = Full * 100;
        for (var x = left; x < right; x++)
        {
            var share = cover[x] * opacity;
            cover[x] = 0;
            var at = ((row * width) + x) * 3;
            if (share == Whole)
            {
                (pixels[at], pixels[at + 1], pixels[at + 2]) = (colour.Red, colour.Green, colour.Blue);
                continue;
            }
            pixels[at] = Mixed(pixels[at], colour.Red, share);
            pixels[at + 1] = Mixed(pixels[at + 1], colour.Green, share);
            pixels[at + 2] = Mixed(pixels[at + 2], colour.Blue, share);
        }

        static byte Mixed(byte under, byte over, int share) =>
            (byte)(((under * (Whole - share)) + (over * share) + (Whole / 2)) / Whole);
    }
}
