using System.Collections.Immutable;
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

    internal const int LineStep = Fraction / LinesPerRow;

    /// <summary>Of a pixel that is covered wholly.</summary>
    private const int Full = Fraction * LinesPerRow;

    /// <summary>Where outlines cross scan lines: the line, and the <see cref="Crossing"/> on it.</summary>
    private readonly List<(int Line, long Place)> crossings = [];

    /// <summary>For each scan line from the first that is crossed where its crossings begin, and one more.</summary>
    private readonly int[] begins = new int[(height * LinesPerRow) + 1];

    /// <summary>The places of all crossings, line by line.</summary>
    private long[] places = [];

    /// <summary>What the next paint fills.</summary>
    private readonly Spans spans = new(height * LinesPerRow);

    /// <summary>Where a convex outline goes down, and where it goes up again, on each line.</summary>
    private readonly int[] downs = new int[height * LinesPerRow];
    private readonly int[] ups = new int[height * LinesPerRow];

    /// <summary>
    /// Of the row that is painted, how much more each pixel is covered than the one on its left; zero between rows.
    /// </summary>
    private readonly int[] cover = new int[width + 1];

    /// <summary>Adds closed outlines to what the next paint fills, by the non-zero rule.</summary>
    internal void Add(IEnumerable<ImmutableArray<Point>> outlines)
    {
        foreach (var outline in outlines)
            for (var i = 0; i < outline.Length; i++)
                Add(outline[i], outline[(i + 1) % outline.Length]);
        Fill();
    }

    /// <summary>The same of one outline that any line crosses twice at most.</summary>
    internal void AddConvex(ReadOnlySpan<Point> outline)
    {
        var (top, bottom) = (int.MaxValue, 0);
        for (var i = 0; i < outline.Length; i++)
        {
            var edge = new PainterEdge(outline[i], outline[i + 1 == outline.Length ? 0 : i + 1]);
            var (first, end) = LinesOf(edge);
            if (first >= end)
                continue;
            edge.Cross(first, (edge.Turn > 0 ? downs : ups).AsSpan(first, end - first));
            (top, bottom) = (Math.Min(top, first), Math.Max(bottom, end));
        }
        for (var line = top; line < bottom; line++)
            spans.Add(line, Math.Min(downs[line], ups[line]), Math.Max(downs[line], ups[line]));
    }

    /// <summary>The same of the end of a pen.</summary>
    internal void Add(Nib nib, Point at)
    {
        var shape = nib.At(at.Y);
        // Rounded down, above the picture, too.
        var line = (int)Math.Floor((double)at.Y / LineStep) + shape.First;
        foreach (var (from, to) in shape.Lines)
        {
            if (line >= 0 && line < height * LinesPerRow)
                spans.Add(line, at.X + from, at.X + to);
            line++;
        }
    }

    /// <summary>Those that a pen has used, by their radius.</summary>
    internal Dictionary<double, Nib> Nibs { get; } = [];

    private void Add(Point from, Point to)
    {
        var edge = new PainterEdge(from, to);
        var (first, end) = LinesOf(edge);
        if (first >= end)
            return;
        var crossed = downs.AsSpan(first, end - first);
        edge.Cross(first, crossed);
        foreach (var place in crossed)
            crossings.Add((first++, Crossing(place, edge.Turn)));
    }

    private (int First, int End) LinesOf(in PainterEdge edge) =>
        (Math.Max(0, edge.First), Math.Min(height * LinesPerRow, edge.End));

    /// <summary>
    /// A number that is the greater the further right the place is, and says whether the outline goes round what lies
    /// there once more or once less.
    /// </summary>
    private static long Crossing(int x, int turn) => ((long)x << 1) | (turn > 0 ? 1L : 0L);

    private static int PlaceOf(long crossing) => (int)(crossing >> 1);

    private static int TurnOf(long crossing) => (crossing & 1) != 0 ? 1 : -1;

    /// <summary>Paints what was added, and forgets it.</summary>
    internal void Paint(Colour colour, int opacity)
    {
        for (var row = spans.Top / LinesPerRow; row <= spans.Bottom / LinesPerRow; row++)
        {
            var (left, right) = (width, 0);
            for (var line = row * LinesPerRow; line < (row + 1) * LinesPerRow; line++)
                foreach (var (from, to) in spans.Take(line))
                    Cover(from, to, ref left, ref right);
            Blend(row, left, right, colour, opacity);
        }
        spans.Forget();
    }

    /// <summary>What lies within the outlines.</summary>
    private void Fill()
    {
        if (crossings.Count == 0)
            return;
        var (top, bottom) = Sort();
        for (var line = top; line <= bottom; line++)
        {
            var turns = 0;
            for (var i = begins[line - top]; i < begins[line - top + 1]; i++)
            {
                if (turns != 0)
                    spans.Add(line, PlaceOf(places[i - 1]), PlaceOf(places[i]));
                turns += TurnOf(places[i]);
            }
        }
        crossings.Clear();
    }

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

    /// <summary>Pixels of one row once more on another.</summary>
    internal void Repeat(int x, int count, int from, int to) =>
        pixels.AsSpan(((from * width) + x) * 3, count * 3).CopyTo(pixels.AsSpan(((to * width) + x) * 3));

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
            if (share is 0 or Whole)
            {
                // Up to where the cover changes again; at the right end it does.
                var same = cover.AsSpan(x + 1).IndexOfAnyExcept(0) + 1;
                if (share == Whole)
                    Fill(pixels.AsSpan(at, 3 * same), colour);
                x += same - 1;
                continue;
            }
            pixels[at] = Mixed(pixels[at], colour.Red, share);
            pixels[at + 1] = Mixed(pixels[at + 1], colour.Green, share);
            pixels[at + 2] = Mixed(pixels[at + 2], colour.Blue, share);
        }
        cover[right] = 0;

        static void Fill(Span<byte> row, Colour colour)
        {
            (row[0], row[1], row[2]) = (colour.Red, colour.Green, colour.Blue);
            for (var filled = 3; filled < row.Length; filled *= 2)
                row[..Math.Min(filled, row.Length - filled)].CopyTo(row[filled..]);
        }

        static byte Mixed(byte under, byte over, int share) =>
            (byte)(((under * (Whole - share)) + (over * share) + (Whole / 2)) / Whole);
    }
}
