using CsCheck;
using Splitter.Cutting;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Tests.Stitching.Fills;

/// <summary>Ground that fills are tried on.</summary>
internal static class FillCases
{
    internal const int Pull = 200;

    /// <summary>Wavy stars with up to four holes, 10 to 50 mm across, at any angle.</summary>
    internal static readonly Gen<(Region Ground, double Angle, bool Underlay)> Drawn =
        from radii in Gen.Double[0.35, 1].Array[5, 24]
        from size in Gen.Double[5, 25]
        from holes in Gen.Select(Gen.Double[-0.5, 0.5], Gen.Double[-0.5, 0.5], Gen.Double[0.05, 0.3]).Array[0, 4]
        from angle in Gen.OneOf(Gen.Const(0.0), Gen.Const(90.0), Gen.Double[0, 180])
        from underlay in Gen.Bool
        select (Shape(radii, size, holes), angle, underlay);

    internal static FillPiece Whole(Region ground, double angle, bool underlay, int pull = Pull)
    {
        var shape = Samples.Fill("ground", ground);
        shape = shape with
        {
            Style = shape.Style with
            {
                Angle = angle,
                Pull = pull,
                Underlay = underlay ? [UnderlayKind.Edge, UnderlayKind.Cross] : [],
            },
        };
        return new()
        {
            Shape = shape,
            Hooping = 0,
            Core = ground,
            EvenRows = ground,
            OddRows = ground,
        };
    }

    internal static Region Square(int side) => Region.Of(new Box(0, 0, side, side));

    internal static Region Circle(double x, double y, double radius) =>
        Samples.Ground([
            .. Enumerable
                .Range(0, 24)
                .SelectMany(i =>
                    new[] { x + (radius * Math.Cos(i * Math.PI / 12)), y + (radius * Math.Sin(i * Math.PI / 12)) }
                ),
        ]);

    /// <summary>A star by the radii of its corners (shares of the size in mm), less round holes.</summary>
    internal static Region Shape(double[] radii, double size, (double X, double Y, double R)[] holes)
    {
        var star = Samples.Ground([
            .. radii.SelectMany(
                (r, i) =>
                    new[]
                    {
                        size * r * Math.Cos(2 * Math.PI * i / radii.Length),
                        size * r * Math.Sin(2 * Math.PI * i / radii.Length),
                    }
            ),
        ]);
        return Polygons.Subtract(star, Polygons.Union(holes.Select(h => Circle(h.X * size, h.Y * size, h.R * size))));
    }
}
