using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Globalization;
using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// Text as lines, with letters of our own, so that a picture needs no font and looks the same everywhere.
/// </summary>
internal static class StrokeFont
{
    /// <summary>Height of a capital on the letters' grid.</summary>
    private const double Capital = 12;

    /// <summary>Between two letters, on the letters' grid.</summary>
    private const double Gap = 2.8;

    /// <summary>
    /// Times that corners are cut off; three more points a corner each time, and a smooth line after three.
    /// </summary>
    private const int Roundings = 3;

    private sealed record Letter(double Width, ImmutableArray<ImmutableArray<(double X, double Y)>> Strokes);

    /// <summary>Letters are parsed when first used: few texts use them all.</summary>
    private static readonly ConcurrentDictionary<char, Letter> Letters = new();

    /// <summary>A text in the letters that there are.</summary>
    internal static string LettersOf(string text) => PlainLetters.Of(text, Glyphs.BesideAscii);

    /// <summary>Micrometres.</summary>
    internal static int WidthOf(string text, int height)
    {
        var letters = LettersOf(text);
        var width = letters.Sum(c => Find(c).Width + Gap) - Gap;
        return letters.Length == 0 ? 0 : Scaled(width, height);
    }

    /// <summary>Lines of a text whose baseline begins at a point; dots of letters are very short lines.</summary>
    internal static ImmutableArray<ImmutableArray<Point>> Set(string text, Point at, int height)
    {
        var lines = ImmutableArray.CreateBuilder<ImmutableArray<Point>>();
        var x = 0.0;
        foreach (var c in LettersOf(text))
        {
            var letter = Find(c);
            if (c != ' ')
                lines.AddRange(
                    letter.Strokes.Select(s =>
                        s.Select(p => new Point(at.X + Scaled(x + p.X, height), at.Y - Scaled(p.Y, height)))
                            .ToImmutableArray()
                    )
                );
            x += letter.Width + Gap;
        }
        return lines.ToImmutable();
    }

    /// <summary>
    /// One letter on a grid where capitals are <see cref="Grid"/> high, y down, and how far the next one stands from
    /// it.
    /// </summary>
    internal static (ImmutableArray<ImmutableArray<Point>> Lines, int Advance) OnGrid(char c)
    {
        var letter = Find(c);
        return (
            [
                .. letter.Strokes.Select(s =>
                    s.Select(p => new Point(Scaled(p.X, Grid), -Scaled(p.Y, Grid))).ToImmutableArray()
                ),
            ],
            Scaled(letter.Width + Gap, Grid)
        );
    }

    /// <summary>Height of a capital for <see cref="OnGrid"/>: ten to a unit, finer than a letter is printed.</summary>
    internal const int Grid = 120;

    private static int Scaled(double units, int height) =>
        (int)Math.Round(units * height / Capital, MidpointRounding.AwayFromZero);

    private static Letter Find(char c) =>
        Letters.GetOrAdd(c, static c => Parse(Glyphs.Strokes.GetValueOrDefault(c, Glyphs.Missing)));

    private static Letter Parse(string text)
    {
        ImmutableArray<ImmutableArray<(double X, double Y)>> strokes = [.. text.Split(';').Select(Stroke)];
        return new(strokes.SelectMany(s => s).Max(p => p.X), strokes);
    }

    private static ImmutableArray<(double X, double Y)> Stroke(string text)
    {
        ImmutableArray<(double X, double Y)> points =
        [
            .. text.TrimStart('~', '@')
                .Split(' ')
                .Select(p => p.Split(','))
                .Select(p =>
                    (double.Parse(p[0], CultureInfo.InvariantCulture), double.Parse(p[1], CultureInfo.InvariantCulture))
                ),
        ];
        var loop = text[0] == '@';
        for (var i = 0; i < (text[0] is '~' or '@' ? Roundings : 0); i++)
            points = Rounded(points, loop);
        return loop ? points.Add(points[0]) : points;
    }

    /// <summary>Each corner cut a quarter of the way to its neighbours; the ends of an open stroke stay.</summary>
    private static ImmutableArray<(double X, double Y)> Rounded(ImmutableArray<(double X, double Y)> points, bool loop)
    {
        var rounded = ImmutableArray.CreateBuilder<(double, double)>();
        if (!loop)
            rounded.Add(points[0]);
        for (var i = 0; i < points.Length - (loop ? 0 : 1); i++)
        {
            var (a, b) = (points[i], points[(i + 1) % points.Length]);
            if (loop || i > 0)
                rounded.Add(((0.75 * a.X) + (0.25 * b.X), (0.75 * a.Y) + (0.25 * b.Y)));
            if (loop || i < points.Length - 2)
                rounded.Add(((0.25 * a.X) + (0.75 * b.X), (0.25 * a.Y) + (0.75 * b.Y)));
        }
        if (!loop)
            rounded.Add(points[^1]);
        return rounded.ToImmutable();
    }
}
