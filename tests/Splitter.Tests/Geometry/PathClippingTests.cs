using System.Collections.Immutable;
using CsCheck;
using Splitter.Geometry;

namespace Splitter.Tests.Geometry;

public sealed class PathClippingTests
{
    [Fact]
    public void APathThroughAHoleComesInTwoStretchesInItsOwnDirection()
    {
        var ring = Polygons.Subtract(Region.Of(new Box(0, 0, 9000, 9000)), Region.Of(new Box(3000, 3000, 6000, 6000)));
        var path = new Polyline([new(12_000, 4000), new(-2000, 4000)]);
        var clipping = new PathClipping(ring);
        Point[][] expected =
        [
            [new(9000, 4000), new(6000, 4000)],
            [new(3000, 4000), new(0, 4000)],
        ];
        Assert.Equal(expected, clipping.Inside(path).Select(p => p.Points.ToArray()));
        Assert.Equal([3000, 3000, 2000], clipping.Outside(path).Select(p => p.Length));
    }

    [Fact]
    public void AClosedPathRunsOnOverItsOwnStart()
    {
        var square = new Ring([new(0, 0), new(4000, 0), new(4000, 4000), new(0, 4000)]).ToPolyline();
        var left = new PathClipping(Region.Of(new Box(-1000, -1000, 2000, 9000)));
        var only = Assert.Single(left.Inside(square));
        Point[] expected = [new(2000, 4000), new(0, 4000), new(0, 0), new(2000, 0)];
        Assert.Equal(expected, only.Points.ToArray());
    }

    [Fact]
    public void WhatIsInsideAndWhatIsOutsideIsThePath() =>
        Gen.Select(PolygonsTests.Star, Gen.Select(Gen.Int[-20_000, 90_000], Gen.Int[-20_000, 90_000]).Array[2, 12])
            .Holds(
                (region, corners) =>
                {
                    ImmutableArray<Point> points = [.. corners.Select(c => new Point(c.Item1, c.Item2)).Distinct()];
                    if (points.Length < 2)
                        return;
                    var (path, clipping) = (new Polyline(points), new PathClipping(region));
                    var (inside, outside) = (clipping.Inside(path), clipping.Outside(path));
                    // Each cut is rounded to whole µm twice.
                    var tolerance = 4.0 * (inside.Length + outside.Length);
                    var length = inside.Sum(p => p.Length) + outside.Sum(p => p.Length);
                    Assert.InRange(length, path.Length - tolerance, path.Length + tolerance);
                    var (room, hole) = (
                        Polygons.Containment(Polygons.Offset(region, 30, Join.Mitre)),
                        Polygons.Containment(Polygons.Offset(region, -30, Join.Mitre))
                    );
                    Assert.All(inside, p => Assert.True(All(p, room)));
                    Assert.All(outside, p => Assert.True(All(p, (x, y) => !hole(x, y))));
                },
                cases: 200
            );

    private static bool All(Polyline path, Func<double, double, bool> holds) =>
        path.Points.Zip(path.Points.Skip(1), (a, b) => a.Towards(b, 0.5)).Concat(path.Points).All(p => holds(p.X, p.Y));
}
