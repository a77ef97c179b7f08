using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Planning.Fields;

/// <summary>
/// The cloth's folds on the drawing. The person folds the cloth, lays the folds on lines sewn on the bare stabilizer,
/// and so knows where the work lies: the first field has to hold the place where the folds cross.
/// </summary>
internal static class Folds
{
    /// <summary>
    /// Length of each fold line, µm, that the first field holds at least: shorter, and a fold cannot be laid straight
    /// on it. Common practice, no source.
    /// </summary>
    private const int Hold = 30 * Units.Millimetre;

    /// <summary>How far a line runs on past the crossing, µm, so that the crossing is seen as one.</summary>
    private const int Beyond = 2 * Units.Millimetre;

    /// <summary>Where the folds cross on the drawing; null when the recipe does not give both.</summary>
    internal static Point? Crossing(Cloth cloth) =>
        cloth is { UprightFold: { } upright, LevelFold: { } level } ? OnDrawing(cloth, upright, level) : null;

    /// <summary>The ground that the first field must hold; null when the recipe does not give both folds.</summary>
    /// <param name="towards">The upright line is held on this side of the crossing.</param>
    internal static Box? Held(Cloth cloth, Point towards)
    {
        if (Crossing(cloth) is not { } crossing)
            return null;
        var up = towards.Y < crossing.Y;
        return new Box(
            crossing.X - (Hold / 2),
            crossing.Y - (up ? Hold : Beyond),
            crossing.X + (Hold / 2),
            crossing.Y + (up ? Beyond : Hold)
        );
    }

    /// <summary>The stretches of the fold lines inside a field, on the tape's grid.</summary>
    internal static ImmutableArray<PlacementLine> LinesIn(Cloth cloth, Field field)
    {
        var box = field.Usable;
        var at = OnDrawing(cloth, cloth.UprightFold ?? 0, cloth.LevelFold ?? 0);
        var lines = ImmutableArray.CreateBuilder<PlacementLine>();
        if (cloth.UprightFold is not null && at.X >= box.Left && at.X <= box.Right)
            lines.Add(new(Fold.Upright, Inwards(at.X, box.Top), Inwards(at.X, box.Bottom)));
        if (cloth.LevelFold is not null && at.Y >= box.Top && at.Y <= box.Bottom)
            lines.Add(new(Fold.Level, Inwards(box.Left, at.Y), Inwards(box.Right, at.Y)));
        return lines.ToImmutable();

        // Rounding to the tape's grid must not step over the field's edge.
        Point Inwards(int x, int y)
        {
            var p = new Point(x, y).OnTape();
            return new(
                p.X < box.Left ? p.X + Units.TapeStep
                    : p.X > box.Right ? p.X - Units.TapeStep
                    : p.X,
                p.Y < box.Top ? p.Y + Units.TapeStep
                    : p.Y > box.Bottom ? p.Y - Units.TapeStep
                    : p.Y
            );
        }
    }

    private static Point OnDrawing(Cloth cloth, int upright, int level) => new Point(upright, level) - cloth.ArtworkAt;
}
