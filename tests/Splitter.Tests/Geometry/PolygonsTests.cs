using System.Collections.Immutable;
using CsCheck;
using Splitter.Geometry;
using Splitter.Tests.Artwork.Columns;

namespace Splitter.Tests.Geometry;

public sealed class PolygonsTests
{
    private const double SquareMillimetre = 1e6;

    /// <summary>Rounding vertices to whole µm moves an edge of 100 mm by half a µm: 0.05 mm² an edge.</summary>
    private const double Rounding = 0.2;

    /// <summary>Squares of 0-4 and 2-6 mm: by hand.</summary>
    [Fact]
    public void SquaresThatOverlap()
    {
        var (a, b) = (Square(0, 4), Square(2, 4));
        AssertArea(4, Polygons.Intersect(a, b), 0);
        AssertArea(28, Polygons.Union(a, b), 0);
        AssertArea(12, Polygons.Subtract(a, b), 0);
    }

    /// <summary>
    /// What is drawn many times over is looked at once: else each side would meet each other one of its kind, here a
    /// hundred million pairs.
    /// </summary>
    [Fact]
    public void CopiesOfTheSameGroundAreOne()
    {
        ImmutableArray<Region> copies =
        [
            .. Enumerable.Range(0, 500).Select(_ => Polygons.Offset(Samples.Ground(0, 0, 90, 10, 10, 90), 20_000)),
        ];
        Assert.Same(copies[0], Polygons.Union(copies));
        var other = Square(200, 4);
        Assert.Equal(Polygons.Union(copies[0], other).Rings, Polygons.Union([.. copies, other, .. copies]).Rings);
    }

    /// <summary>Two halves of a square have the same box, and as many corners.</summary>
    [Fact]
    public void OtherGroundInTheSameBoxIsNoCopy() =>
        AssertArea(100, Polygons.Union(Samples.Ground(0, 0, 10, 0, 10, 10), Samples.Ground(0, 0, 10, 10, 0, 10)), 0);

    /// <summary>Closed form of the intersection of a square and itself turned about its centre: 2 s² / (1 + sin + cos).</summary>
    [Theory]
    [InlineData(30, 8452.994616, 11547.005384, 1547.005384)]
    [InlineData(45, 8284.271247, 11715.728753, 1715.728753)]
    public void ASquareAndItselfTurned(double degrees, double and, double or, double without)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        Assert.Equal(2 * 100 * 100 / (1 + sin + cos), and, 6);
        var square = Samples.Ground(-50, -50, 50, -50, 50, 50, -50, 50);
        var turned = Samples.Ground([
            .. new[] { (-50, -50), (50, -50), (50, 50), (-50, 50) }.SelectMany(p =>
                new[] { (p.Item1 * cos) - (p.Item2 * sin), (p.Item1 * sin) + (p.Item2 * cos) }
            ),
        ]);
        AssertArea(and, Polygons.Intersect(square, turned), Rounding);
        AssertArea(or, Polygons.Union(square, turned), Rounding);
        AssertArea(without, Polygons.Subtract(square, turned), Rounding);
    }

    /// <summary>A pentagram of radius 100 mm; areas computed independently in double precision.</summary>
    [Theory]
    [InlineData(FillRule.NonZero, 11225.699414489633)]
    [InlineData(FillRule.EvenOdd, 7756.767521667)]
    internal void APentagramByBothRules(FillRule rule, double area)
    {
        var points = Enumerable
            .Range(0, 5)
            .Select(i => Point.FromMillimetres(100 * Math.Cos(i * 0.8 * Math.PI), 100 * Math.Sin(i * 0.8 * Math.PI)));
        AssertArea(area, Polygons.FromRings([new Ring([.. points])], rule), Rounding);
    }

    [Theory]
    [InlineData(10)]
    [InlineData(-10)]
    public void OffsetsOfASquare(double by)
    {
        var square = Square(0, 100);
        // Steiner's formula: area + perimeter · r + pi r²; mitred corners are squares; inwards both are the smaller square.
        AssertArea(by < 0 ? 6400 : 14_400, Polygons.Offset(square, by * 1000, Join.Mitre), 0.01);
        AssertArea(by < 0 ? 6400 : 14_000 + (Math.PI * 100), Polygons.Offset(square, by * 1000), 0.7);
    }

    [Theory]
    [InlineData(15)]
    [InlineData(-15)]
    public void OffsetsOfACircle(double by)
    {
        var circle = Circle(50, 720);
        var expected = Math.PI * (50 + by) * (50 + by);
        // Facets stray by up to 0.01 mm each for the arc and for the vertices dropped before.
        AssertArea(expected, Polygons.Offset(circle, by * 1000), 2 * Math.PI * (50 + by) * 0.02);
    }

    [Fact]
    public void AStrokeIsAsWideAsItsPenWithTheCapsThatItAsksFor()
    {
        var line = new Polyline([Point.FromMillimetres(0, 0), Point.FromMillimetres(30, 40)]);
        AssertArea(50 * 6, Polygons.Stroke(line, 6000, Cap.Butt, Join.Round), 0.1);
        AssertArea(56 * 6, Polygons.Stroke(line, 6000, Cap.Square, Join.Round), 0.1);
        AssertArea((50 * 6) + (Math.PI * 9), Polygons.Stroke(line, 6000, Cap.Round, Join.Round), 0.2);
    }

    [Fact]
    public void WhatIsInBothAndWhatIsLeftOverAreTheWhole() =>
        Gen.Select(Star, Star)
            .Holds(
                (a, b) =>
                {
                    var (and, without) = (Polygons.Intersect(a, b), Polygons.Subtract(a, b));
                    // New vertices are rounded: half a µm along the outlines that cross.
                    var tolerance = (Length(a) + Length(b)) * 1.0;
                    Assert.InRange(and.Area + without.Area, a.Area - tolerance, a.Area + tolerance);
                    var or = Polygons.Union(a, b);
                    Assert.InRange(or.Area, without.Area + b.Area - tolerance, without.Area + b.Area + tolerance);
                    Assert.True(or.Polygons.SequenceEqual(Polygons.Union(b, a).Polygons, PolygonEquality.Instance));
                },
                cases: 200
            );

    /// <summary>Steiner: an outline of length L that moves by d sweeps at most L d and, at its corners, a disc a ring.</summary>
    [Fact]
    public void AnOffsetIsWholeAndAddsOrTakesWhatItSweeps() =>
        Gen.Select(
                Gen.OneOf(StrokePaths.AnyCornered, StrokePaths.AnySmooth, StrokePaths.Wavering),
                Gen.Int[800, 8000],
                Gen.Int[-1500, 1500]
            )
            .Holds(
                (path, width, by) => AssertOffset(Polygons.Stroke(path, width, Cap.Butt, Join.Round), by),
                cases: 200
            );

    /// <summary>Given whole micrometres the engine gave nothing back.</summary>
    [Fact]
    public void ATriangleMadeSmallerByNineMicrometresIsStillThere() =>
        AssertOffset(Samples.Ground(37.284, 24.346, 65.531, 54.833, 60.983, 0.618), -9);

    /// <summary>One inch is 25.4 mm exactly (international yard and pound agreement, 1959).</summary>
    [Fact]
    public void UnitsAreExact()
    {
        Assert.Equal(25_400, Units.FromMillimetres(25.4));
        Assert.Equal(25_400, Units.Inch);
        Assert.Equal(25.4, Units.ToMillimetres(Units.Inch));
        Assert.Equal([-100, 0, 0, 100, 100], new[] { -51, -50, 49, 50, 149 }.Select(Units.OnTape));
    }

    internal static readonly Gen<Region> Star =
        from radii in Gen.Double[5, 60].Array[3, 20]
        from x in Gen.Double[0, 60]
        from y in Gen.Double[0, 60]
        select Samples.Ground([
            .. radii.SelectMany(
                (r, i) =>
                    new[]
                    {
                        x + (r * Math.Cos(2 * Math.PI * i / radii.Length)),
                        y + (r * Math.Sin(2 * Math.PI * i / radii.Length)),
                    }
            ),
        ]);

    private static void AssertOffset(Region ground, int by)
    {
        var moved = Polygons.Offset(ground, by);
        Assert.True(EngineForm.ToNts(moved).IsValid, "its polygons overlap");
        // Outlines are simplified by 10 µm and rounded.
        var slack = Length(ground) * 12;
        var swept = (Length(ground) * Math.Abs(by)) + (Math.PI * by * by * ground.Rings.Count()) + slack;
        if (by >= 0)
            Assert.InRange(moved.Area, ground.Area - slack, ground.Area + swept);
        else
            Assert.InRange(moved.Area, Math.Max(0, ground.Area - swept), ground.Area + slack);
    }

    private static double Length(Region region) => region.Rings.Sum(r => r.ToPolyline().Length);

    private static Region Square(double at, double side) =>
        Samples.Ground(at, at, at + side, at, at + side, at + side, at, at + side);

    private static Region Circle(double radius, int corners) =>
        Samples.Ground([
            .. Enumerable
                .Range(0, corners)
                .SelectMany(i =>
                    new[] { radius * Math.Cos(2 * Math.PI * i / corners), radius * Math.Sin(2 * Math.PI * i / corners) }
                ),
        ]);

    private static void AssertArea(double squareMillimetres, Region region, double tolerance) =>
        Assert.InRange(region.Area / SquareMillimetre, squareMillimetres - tolerance, squareMillimetres + tolerance);

    private sealed class PolygonEquality : IEqualityComparer<Polygon>
    {
        internal static readonly PolygonEquality Instance = new();

        public bool Equals(Polygon? a, Polygon? b) => a!.Rings.SequenceEqual(b!.Rings);

        public int GetHashCode(Polygon polygon) => polygon.Outer.Points.Length;
    }

    /// <summary>Ground with rows of holes: what a small thing has in common with it does not depend on the holes elsewhere.</summary>
    [Fact]
    public void NearABoxGroundIsTheSame()
    {
        var holes = from x in Enumerable.Range(0, 8) from y in Enumerable.Range(0, 8) select (X: x * 10.0, Y: y * 10.0);
        var ground = Polygons.Subtract(
            Samples.Ground(0, 0, 80, 0, 80, 80, 0, 80),
            Polygons.Union(
                holes.Select(h =>
                    Samples.Ground(h.X + 2, h.Y + 2, h.X + 7, h.Y + 2, h.X + 7, h.Y + 7, h.X + 2, h.Y + 7)
                )
            )
        );
        var thing = Samples.Ground(24, 24, 47, 24, 47, 31, 30, 31, 30, 52, 24, 52);
        var near = ground.Near(thing.Bounds);
        Assert.Equal((3 * 4) + 1, near.Rings.Count());
        Assert.Same(ground, ground.Near(ground.Bounds));
        // All corners lie on whole millimetres, so that areas are counted square by square, and are exact.
        var (onGround, overHoles) = (0, 0);
        for (var x = 24; x < 47; x++)
        for (var y = 24; y < 52; y++)
            if (x < 30 || y < 31)
                _ = x % 10 is >= 2 and < 7 && y % 10 is >= 2 and < 7 ? overHoles++ : onGround++;
        AssertArea(onGround, Polygons.Intersect(ground, thing), 0);
        AssertArea(onGround, Polygons.Intersect(thing, ground), 0);
        AssertArea(overHoles, Polygons.Subtract(thing, ground), 0);
        AssertArea((80 * 80) - (8 * 8 * 5 * 5) - onGround, Polygons.Subtract(ground, thing), 0);
    }
}
