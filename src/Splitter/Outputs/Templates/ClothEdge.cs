using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;

namespace Splitter.Outputs.Templates;

/// <summary>
/// Where the cloth ends: long dashes and dots, so that it is told from everything that is sewn or folded.
/// </summary>
internal static class ClothEdge
{
    private const int Long = 6 * Units.Millimetre,
        Gap = 2 * Units.Millimetre;

    /// <param name="cloth">As it lies on the board.</param>
    /// <param name="ground">What the board shows.</param>
    internal static void Draw(Canvas canvas, MarkSigns signs, Box cloth, Box ground, string name)
    {
        foreach (var (from, to) in Sides(cloth, ground))
        {
            Line(canvas, from, to);
            signs.Line(from, to);
            if (signs.HasRoom(from.Towards(to, 0.5)))
                signs.Name(name, from.Towards(to, 0.5), TemplateInk.SmallLetters, Colour.Ink, default);
        }
    }

    /// <summary>A dash, a dot, and so on.</summary>
    internal static void Line(Canvas canvas, Point from, Point to)
    {
        var length = from.DistanceTo(to);
        var strokes = ImmutableArray.CreateBuilder<ImmutableArray<Point>>();
        for (var at = 0.0; at < length; at += Long + (2 * Gap))
        {
            strokes.Add([from.Towards(to, at / length), from.Towards(to, Math.Min(1, (at + Long) / length))]);
            if (at + Long + Gap < length)
                strokes.Add([
                    from.Towards(to, (at + Long + Gap) / length),
                    from.Towards(to, (at + Long + Gap) / length),
                ]);
        }
        canvas.Lines(TemplateInk.Strong, Colour.Ink, 100, strokes.ToImmutable());
    }

    /// <summary>What of the cloth's edges lies on the board.</summary>
    private static IEnumerable<(Point From, Point To)> Sides(Box cloth, Box ground)
    {
        var seen = cloth.Common(ground);
        if (seen.IsEmpty)
            yield break;
        foreach (var x in new[] { cloth.Left, cloth.Right })
            if (x > ground.Left && x < ground.Right)
                yield return (new(x, seen.Top), new(x, seen.Bottom));
        foreach (var y in new[] { cloth.Top, cloth.Bottom })
            if (y > ground.Top && y < ground.Bottom)
                yield return (new(seen.Left, y), new(seen.Right, y));
    }
}
