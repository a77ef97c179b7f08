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

    /// <summary>Where outlines cross scan lines: the line, and the <see cref="Crossing"/> on it.</summary>
    private readonly List<(int Line, long Place)> crossings = [];

    /// <summary>For each scan line from the first that is crossed where its crossings begin, and one more.</summary>
    private readonly int[] begins = new int[(height * LinesPerRow) + 1];

    /// <summary>The places of all crossings, line by line.</summary>
    private long[] places = [];

    /// <summary>
    /// Of the row that is painted, how much more each pixel is covered than the one on its left; zero between rows.
    /// </summary>
    private readonly int[] cover = new int[width + 1];

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
            crossings.Add((line, Crossing(top.X + (int)(down * (bottom.X - top.X) / (bottom.Y - top.Y)), turn)));
        }
    }

    /// <summary>
    /// A number that is the greater the further right the place is, and says whether the outline goes round what lies
    /// there once more or once less.
    /// </summary>
    private static long Crossing(int x, int turn) => ((long)x << 1) | (turn > 0 ? 1L : 0L);

    private static int PlaceOf(long crossing) => (int)(crossing >> 1);

    private static int TurnOf(long crossing) => (crossing & 1) != 0 ? 1 : -1;

    private static int Ceiling(int y) => (int)Math.Ceiling(y / (double)LineStep);

    /// <summary>Fills what was added, by the non-zero rule, and forgets it.</summary>
    internal void Paint(Colour colour, int opacity)
    {
        if (crossings.Count == 0)
            return;
        var (top, bottom) = Sort();
        for (var row = top / LinesPerRow; row <= bottom / LinesPerRow; row++)
        {
            var (left, right) = (width, 0);
            for (var line = Math.Max(top, row * LinesPerRow); line <= Math.Min(bottom, LastOf(row)); line++)
            {
                var turns = 0;
                for (var i = begins[line - top]; i < begins[line - top + 1]; i++)
                {
                    if (turns != 0)
                        Cover(PlaceOf(places[i - 1]), PlaceOf(places[i]), ref left, ref right);
                    turns += TurnOf(places[i]);
                }
            }
            Blend(row, left, right, colour, opacity);
        }
        crossings.Clear();
    }

    private static int LastOf(int row) => ((row + 1) * LinesPerRow) - 1;

    /// <summary>Puts the places of the crossings of each line in order; the first and last line that has any.</summary>
    private (int Top, int Bottom) Sort()
    {
        if (places.Length < crossings.Count)
            places = new long[crossings.Count];
        var (top, bottom) = (int.MaxValue, 0);
        foreach (var (line, _) in crossings)
            (top, bottom) = (Math.Min(top, line), Math.Max(bottom, line));
        var lines = bottom - top + 1;
        Array.Clear(begins, 0, lines + 1);
        foreach (var (line, _) in crossings)
            begins[line - top]++;
        for (var (line, sum) = (0, 0); line <= lines; line++)
            begins[line] = sum += begins[line];
        foreach (var (line, place) in crossings)
            places[--begins[line - top]] = place;
        for (var line = 0; line < lines; line++)
            places.AsSpan(begins[line]..begins[line + 1]).Sort();
        return (top, bottom);
    }

    /// <summary>Other shades on one pixel.</summary>
    /// <param name="shades">For each of the shades of a channel the one that it becomes.</param>
    internal void Shade(int x, int y, ReadOnlySpan<byte> shades)
    {
        foreach (ref var value in pixels.AsSpan(((y * width) + x) * 3, 3))
            value = shades[value];
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
        // Full from the second pixel up to the last, and a part of the first and of the last.
        var (before, after) = (from - (first * Fraction), ((last + 1) * Fraction) - to);
        cover[first] += Fraction - before;
        cover[first + 1] += before;
        cover[last] -= after;
        cover[last + 1] -= Fraction - after;
    }

    private void Blend(int row, int left, int right, Colour colour, int opacity)
    {
        const int Whole = Full * 100;
        var covered = 0;
        for (var x = left; x < right; x++)
        {
            covered += cover[x];
            var share = covered * opacity;
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
        cover[right] = 0;

        static byte Mixed(byte under, byte over, int share) =>
            (byte)(((under * (Whole - share)) + (over * share) + (Whole / 2)) / Whole);
    }
}
