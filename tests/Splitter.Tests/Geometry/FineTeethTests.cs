using NetTopologySuite.Operation.Buffer;
using Splitter.Geometry;

namespace Splitter.Tests.Geometry;

public sealed class FineTeethTests
{
    /// <summary>µm, the offset's own tolerance.</summary>
    private const double Tolerance = 10;

    /// <summary>
    /// 7,500 teeth 0.04 mm wide and 0.06 mm deep: each met hundreds of others when it was offset. In as much as a straight
    /// side may bridge, by Pythagoras 0.25 mm, are six of them.
    /// </summary>
    [Theory]
    [InlineData(800, 7500 / 6)]
    [InlineData(-800, 7500 / 6)]
    [InlineData(200, 7500 / 3)]
    public void OfTeethFinerThanATapeIsOnlyTheirEdgeLeft(int by, int points) =>
        Assert.InRange(Points(FineTeeth.Closed(Teeth(7500, 40, 60), by, Tolerance)), points, points + 10);

    /// <summary>
    /// 2,000 crenels 60 mm deep and 0.075 mm wide: each has as much ground as a disc that the offset draws, and none of it is
    /// further from its sides than they are from each other. A straight side may bridge two of them.
    /// </summary>
    [Theory]
    [InlineData(1100)]
    [InlineData(-1100)]
    public void OfDeepTeethOnlyTheirEdgeIsLeft(int by)
    {
        var closed = FineTeeth.Closed(Crenels(2000, 75, 60_000), by, Tolerance);
        Assert.InRange(Points(closed), 1000, 2000 + 10);
        Assert.InRange(closed.Area / (300_000.0 * (by > 0 ? 70_000 : 10_000)), 0.99, 1.01);
    }

    /// <summary>The engine offsets all teeth as they are: the outline strays by no more than was allowed, and its own arcs.</summary>
    [Theory]
    [InlineData(300, false)]
    [InlineData(-300, false)]
    [InlineData(300, true)]
    [InlineData(-300, true)]
    public void TheOffsetIsTheSame(int by, bool deep)
    {
        var teeth = deep ? Crenels(1100, 75, 6000) : Teeth(1100, 40, 60);
        var plain = EngineForm.ToNts(Polygons.Offset(teeth, by));
        var exact = BufferOp.Buffer(EngineForm.Floating.CreateGeometry(EngineForm.ToNts(teeth)), by, 8);
        Assert.True(plain.Buffer(3 * Tolerance).Covers(exact));
        Assert.True(exact.Buffer(3 * Tolerance).Covers(plain));
    }

    /// <summary>Deep dents wider than the offset bridges stay: here 0.4 mm wide.</summary>
    [Fact]
    public void WhatIsNotFineStaysAsItIs()
    {
        var coarse = Teeth(2500, 400, 300);
        Assert.Same(coarse, FineTeeth.Closed(coarse, 800, Tolerance));
        var few = Teeth(900, 40, 60);
        Assert.Same(few, FineTeeth.Closed(few, 800, Tolerance));
    }

    /// <summary>
    /// Behind a mouth that a straight side may bridge, 0.2 mm wide, lies a chamber of 4 x 4 mm: its middle is out of the offset's
    /// reach, and stays bare.
    /// </summary>
    [Fact]
    public void WhatIsWideBehindANarrowMouthStays()
    {
        var teeth = Teeth(2500, 40, 60);
        var chamber = Samples.Ground(48, 4, 52, 4, 52, 8, 48, 8);
        var keyhole = Polygons.Union(chamber, Samples.Ground(49.9, 8, 50.1, 8, 50.1, 10, 49.9, 10));
        var ground = Polygons.Subtract(teeth, keyhole);
        Assert.Single(ground.Rings);
        var closed = FineTeeth.Closed(ground, 800, Tolerance);
        Assert.InRange(Points(closed), 2500 / 6, 2500 / 6 + 20);
        Assert.False(Polygons.Containment(closed)(50_000, 6_000));
        Assert.False(Polygons.Containment(Polygons.Offset(ground, 800))(50_000, 6_000));
    }

    /// <summary>A hole with teeth all round keeps its ground but for them, whichever way it is offset.</summary>
    [Theory]
    [InlineData(500)]
    [InlineData(-500)]
    public void TeethOfHolesAreTeeth(int by)
    {
        var wheel = Wheel(teeth: 3000, radius: 20_000, deep: 50);
        var ground = Polygons.Subtract(Region.Of(new(-40_000, -40_000, 40_000, 40_000)), wheel);
        var closed = FineTeeth.Closed(ground, by, Tolerance);
        Assert.Single(Assert.Single(closed.Polygons).Holes);
        Assert.InRange(Points(closed), 400, 1500);
        Assert.True(by > 0 ? closed.Area > ground.Area : closed.Area < ground.Area);
        Assert.InRange(Math.Abs(closed.Area / ground.Area - 1), 0, 0.001);
    }

    /// <summary>A block 10 mm high with teeth along its upper edge; µm.</summary>
    internal static Region Teeth(int count, int wide, int deep) =>
        Polygons.FromRings(
            [
                new Ring([
                    .. Enumerable
                        .Range(0, count)
                        .SelectMany(i => new[] { new Point(i * wide, 0), new Point((i * wide) + (wide / 2), -deep) }),
                    new(count * wide, 0),
                    new(count * wide, 10_000),
                    new(0, 10_000),
                ]),
            ],
            FillRule.NonZero
        );

    /// <summary>The same with teeth as wide as their gaps, square; µm.</summary>
    private static Region Crenels(int count, int wide, int deep) =>
        Polygons.FromRings(
            [
                new Ring([
                    .. Enumerable
                        .Range(0, count)
                        .Select(i => 2 * i * wide)
                        .SelectMany(x =>
                            new Point[] { new(x, 0), new(x, -deep), new(x + wide, -deep), new(x + wide, 0) }
                        ),
                    new(2 * count * wide, 0),
                    new(2 * count * wide, 10_000),
                    new(0, 10_000),
                ]),
            ],
            FillRule.NonZero
        );

    private static Region Wheel(int teeth, int radius, int deep) =>
        Polygons.FromRings(
            [
                new Ring([
                    .. Enumerable
                        .Range(0, 2 * teeth)
                        .Select(i => (Angle: Math.PI * i / teeth, Far: radius + (i % 2 * deep)))
                        .Select(p => new Point(
                            Units.Round(p.Far * Math.Cos(p.Angle)),
                            Units.Round(p.Far * Math.Sin(p.Angle))
                        )),
                ]),
            ],
            FillRule.NonZero
        );

    private static int Points(Region region) => region.Rings.Sum(ring => ring.Points.Length);
}
