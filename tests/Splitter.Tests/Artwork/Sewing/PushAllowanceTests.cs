using CsCheck;
using Splitter.Artwork;
using Splitter.Artwork.Sewing;
using Splitter.Geometry;
using Splitter.Tests.Stitching.Fills;

namespace Splitter.Tests.Artwork.Sewing;

/// <summary>Fills held back against the push of their rows.</summary>
public sealed class PushAllowanceTests
{
    private const int Push = 300;

    /// <summary>What snapping leaves open along an edge of some centimetres, µm².</summary>
    private const double Nothing = 50_000;

    [Fact]
    public void EdgesAlongTheRowsAreHeldBackAndEdgesAcrossThemAreNot() =>
        AssertSame(Region.Of(new Box(0, Push, 20_000, 10_000 - Push)), Held(Rectangle("a", 0, 0, 20, 10)));

    [Fact]
    public void WithoutPushAFillStaysTheVeryShapeItWas()
    {
        var fill = Samples.Rectangle("a", 0, 0, 20, 10);
        Assert.Same(fill, Assert.Single(PushAllowance.Apply([fill])));
    }

    [Fact]
    public void AnEdgeRightBesideAnotherShapeStays()
    {
        var (upper, lower) = (Rectangle("upper", 0, 0, 20, 10), Rectangle("lower", 0, 10, 20, 10));
        var held = PushAllowance.Apply([upper, lower]);
        AssertSame(Region.Of(new Box(0, Push, 20_000, 10_000)), held[0].Footprint);
        AssertSame(Region.Of(new Box(0, 10_000, 20_000, 20_000 - Push)), held[1].Footprint);
    }

    /// <summary>A bar of two rows is sewn as drawn, and so is a neck between two wide places.</summary>
    [Fact]
    public void WhatIsHardlyWiderThanTheAllowanceStays()
    {
        var bar = Rectangle("bar", 0, 0, 20, 0.5);
        AssertSame(bar.Footprint, Held(bar));
        var dumbbell = Polygons.Union([
            Region.Of(new Box(0, 0, 5000, 5000)),
            Region.Of(new Box(5000, 2300, 15_000, 2700)),
            Region.Of(new Box(15_000, 0, 20_000, 5000)),
        ]);
        var held = Held(With(Samples.Fill("dumbbell", dumbbell), 0));
        Assert.Single(held.Polygons);
        Assert.InRange(held.Area, dumbbell.Area - (4 * 5000 * (Push + 10)), dumbbell.Area - (4 * 5000 * (Push - 10)));
    }

    /// <summary>Of a ring sector along its guide, an arc, strips along both arcs go, and nothing at its straight edges.</summary>
    [Fact]
    public void RowsAlongAGuideAreHeldBackWhereTheyRun()
    {
        static Point At(double radius, int degrees) =>
            new Vector(radius * Math.Cos(degrees * Math.PI / 180), radius * Math.Sin(degrees * Math.PI / 180)).From(
                default
            );
        static Region Sector(double from, double to) =>
            Polygons.FromRings(
                [
                    new([
                        .. Enumerable.Range(10, 61).Select(i => At(from, i)),
                        .. Enumerable.Range(10, 61).Select(i => At(to, 80 - i)),
                    ]),
                ],
                FillRule.NonZero
            );
        var arc = new Polyline([.. Enumerable.Range(0, 31).Select(i => At(30_000, 3 * i))]);
        var fill = With(Samples.Fill("sector", Sector(25_000, 35_000)), 0);
        var held = Held(fill with { Style = fill.Style with { Guide = GuidedCases.Guide(arc) } });
        var expected = Sector(25_000 + Push, 35_000 - Push);
        Assert.InRange(Polygons.Subtract(held, expected).Area, 0, 10 * Nothing);
        Assert.InRange(Polygons.Subtract(expected, held).Area, 0, 10 * Nothing);
    }

    [Fact]
    public void OfAnyShapeOnlyAStripAcrossTheRowsGoes() =>
        FillCases.Drawn.Holds(
            c =>
            {
                if (c.Ground.IsEmpty)
                    return;
                var held = Held(With(Samples.Fill("shape", c.Ground), c.Angle));
                Assert.InRange(Polygons.Subtract(held, c.Ground).Area, 0, Nothing);
                var (sin, cos) = Math.SinCos(c.Angle * Math.PI / 180);
                var across = c.Ground.Rings.Sum(ring =>
                    ring.Points.Zip(
                            ring.Points.Skip(1).Append(ring.Points[0]),
                            (a, b) => Math.Abs(((b.X - a.X) * cos) + ((b.Y - a.Y) * sin))
                        )
                        .Sum()
                );
                Assert.InRange(c.Ground.Area - held.Area, 0, (across * Push) + Nothing);
                Assert.True(Polygons.Subtract(Polygons.Offset(c.Ground, -Push - 10), held).Area < Nothing);
            },
            cases: 60
        );

    /// <summary>Any shape on a ground, cut away below it: what one sees is thread, wherever it was.</summary>
    [Fact]
    public void OnAnotherShapeNoClothComesToShow() =>
        FillCases.Drawn.Holds(
            c =>
            {
                var ground = With(
                    Samples.Fill("ground", Region.Of(new Box(-40_000, -40_000, 40_000, 40_000))),
                    c.Angle
                );
                var cut = Layers.CutAway(new(0, 0, []), [ground, With(Samples.Fill("upper", c.Ground), c.Angle)]).Value;
                var held = PushAllowance.Apply(cut);
                var bare = Polygons.Subtract(Covered(cut), Covered(held));
                Assert.InRange(
                    Polygons.Intersect(bare, Region.Of(new Box(-39_000, -39_000, 39_000, 39_000))).Area,
                    0,
                    1
                );
            },
            cases: 60
        );

    private static void AssertSame(Region expected, Region actual)
    {
        Assert.InRange(Polygons.Subtract(expected, actual).Area, 0, 1);
        Assert.InRange(Polygons.Subtract(actual, expected).Area, 0, 1);
    }

    private static Region Covered(IEnumerable<Shape> shapes) => Polygons.Union(shapes.Select(s => s.Footprint));

    private static Region Held(FillShape fill) => Assert.Single(PushAllowance.Apply([fill])).Footprint;

    private static FillShape Rectangle(string id, double x, double y, double width, double height) =>
        With(Samples.Rectangle(id, x, y, width, height), 0);

    private static FillShape With(FillShape fill, double angle) =>
        fill with
        {
            Style = fill.Style with { Angle = angle, Push = Push },
        };
}
