using CsCheck;
using Splitter.Artwork.Columns;
using Splitter.Geometry;
using Point = Splitter.Geometry.Point;

namespace Splitter.Tests.Artwork.Columns;

public class BandTests
{
    /// <summary>A direction that wanders in gentle turns, and a width that swells: middles and half widths, mm.</summary>
    private static readonly Gen<Region> Bands = Gen.Select(
        Gen.Double[-1.0, 1.0].Array[3],
        Gen.Double[0, Math.Tau].Array[4],
        Gen.Double[1.5, 5],
        Gen.Double[0, 0.35],
        Gen.Double[15, 60],
        Band
    );

    [Fact]
    public void Smooth_bands_become_one_column_that_fits() =>
        Bands.Holds(
            ground =>
            {
                var columns = OutlineColumns.From(ground, 9000);
                ColumnChecks.Fit(ground, columns);
                ColumnChecks.KeepOrder(columns);
                ColumnChecks.EndOnOutline(ground, columns);
                Assert.Single(columns);
            },
            cases: 60
        );

    [Fact]
    public void The_same_band_gives_the_same_columns_wherever_its_rings_start() =>
        Bands.Holds(
            ground =>
            {
                var points = ground.Polygons[0].Outer.Points;
                var turned = Polygons.FromRings(
                    [new Ring([.. points.Skip(points.Length / 3), .. points.Take(points.Length / 3)])],
                    FillRule.NonZero
                );
                Assert.Equal(
                    OutlineColumns.From(ground, 9000).Select(c => c.Rungs.ToArray()),
                    OutlineColumns.From(turned, 9000).Select(c => c.Rungs.ToArray())
                );
            },
            cases: 10
        );

    private static Region Band(double[] bends, double[] phases, double width, double swell, double length)
    {
        const int Steps = 160;
        double x = 0,
            y = 0,
            step = length / Steps;
        var (left, right) = (new List<Point>(), new List<Point>());
        for (var i = 0; i <= Steps; i++)
        {
            var at = i * step;
            // Turns have radii of two widths and more, and do not add up to a loop.
            var turn = bends.Select((b, k) => b * Math.Cos((at / (4.0 * width * (k + 1.5))) + phases[k])).Sum() / 3;
            var (sin, cos) = Math.SinCos(turn * 1.4);
            var half = width / 2 * (1 + (swell * Math.Sin((at / (2 * width)) + phases[3])));
            left.Add(Point.FromMillimetres(x + (sin * half), y - (cos * half)));
            right.Add(Point.FromMillimetres(x - (sin * half), y + (cos * half)));
            (x, y) = (x + (cos * step), y + (sin * step));
        }
        return Polygons.FromRings([new Ring([.. left, .. right.AsEnumerable().Reverse()])], FillRule.NonZero);
    }
}
