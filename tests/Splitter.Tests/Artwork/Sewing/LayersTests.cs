using System.Collections.Immutable;
using CsCheck;
using Splitter.Artwork;
using Splitter.Artwork.Sewing;
using Splitter.Geometry;

namespace Splitter.Tests.Artwork.Sewing;

/// <summary>Blobs over each other, some of whose edges nearly coincide: what shows is sewn, and hardly more.</summary>
public sealed class LayersTests
{
    /// <summary>What snapping to whole micrometres leaves along some metres of edge, µm².</summary>
    private const double Splinters = 20_000;

    /// <summary>What is narrower than this may be left out or stay, µm: 0.3 mm, and what offsets stray by on both sides.</summary>
    private const int Sliver = 340;

    /// <summary>How far a shape reaches under its neighbour, less what offsets stray by, µm.</summary>
    private const int Rim = 750;

    private static readonly Gen<Region> Blob =
        from radii in Gen.Double[4, 40].Array[4, 12]
        from x in Gen.Double[0, 50]
        from y in Gen.Double[0, 50]
        select Samples.Ground([
            .. radii.SelectMany(
                (r, i) =>
                    new[]
                    {
                        50 + x + (r * Math.Cos(2 * Math.PI * i / radii.Length)),
                        50 + y + (r * Math.Sin(2 * Math.PI * i / radii.Length)),
                    }
            ),
        ]);

    /// <summary>Each with a second one of nearly the same outline: a little wider, narrower, or just the same.</summary>
    private static readonly Gen<ImmutableArray<Shape>> Drawn =
        from blobs in Gen.Select(Blob, Gen.Int[-900, 900]).Array[2, 4]
        from shuffled in Gen.Shuffle(
            blobs.SelectMany(b => new[] { b.Item1, Polygons.Offset(b.Item1, b.Item2 / 100 * 100) }).ToArray()
        )
        select shuffled
            .Where(ground => !ground.IsEmpty)
            .Select(Shape (ground, i) => Samples.Fill($"shape-{i}", ground))
            .ToImmutableArray();

    [Fact]
    public void WhatShowsIsSewn() =>
        Drawn.Holds(
            drawn =>
            {
                var sewn = Sewn(drawn);
                for (var i = 0; i < drawn.Length; i++)
                    Assert.True(Polygons.Offset(Polygons.Subtract(Shown(drawn, i), sewn[i]), -Sliver / 2.0).IsEmpty);
            },
            cases: 40
        );

    [Fact]
    public void NothingIsSewnThatIsNotDrawn() =>
        Drawn.Holds(
            drawn =>
            {
                foreach (var (shape, sewn) in drawn.Zip(Sewn(drawn)))
                    Assert.True(Polygons.Offset(Polygons.Subtract(sewn, shape.Footprint), -2).IsEmpty);
            },
            cases: 40
        );

    [Fact]
    public void WhereTwoShapesMeetSomethingLiesUnderTheUpperOne() =>
        Drawn.Holds(
            drawn =>
            {
                var sewn = Sewn(drawn);
                var two = Twice(sewn);
                for (var i = 0; i < drawn.Length; i++)
                {
                    var near = Polygons.Offset(Polygons.Offset(Shown(drawn, i), -Sliver), Sliver + Rim);
                    var rim = Polygons.Intersect(Polygons.Intersect(near, drawn[i].Footprint), Cover(drawn, i));
                    Assert.True(Polygons.Offset(Polygons.Subtract(rim, two), -Sliver / 2.0).IsEmpty);
                }
            },
            cases: 40
        );

    [Fact]
    public void NowhereLieThreeOverEachOther() =>
        Drawn.Holds(
            drawn =>
            {
                var sewn = Sewn(drawn);
                var three = Polygons.Union(
                    sewn.Select(
                        (ground, i) =>
                            Polygons.Intersect(ground, Twice([.. sewn.Where((_, other) => other != i && other > i)]))
                    )
                );
                Assert.True(Polygons.Offset(three, -Sliver / 2.0).IsEmpty);
            },
            cases: 40
        );

    [Fact]
    public void AHiddenShapeIsNotSewnAndSaysSo()
    {
        var told = Layers.CutAway(
            new(0, 0, []),
            [Samples.Rectangle("below", 10, 10, 20, 20), Samples.Rectangle("above", 10, 10, 20, 20)]
        );
        Assert.Equal("above", Assert.Single(told.Value).Id);
        Assert.Contains("'below'", Assert.Single(told.Diagnostics).Message, StringComparison.Ordinal);
    }

    /// <summary>
    /// A heron's leg, whose upper end lies 8 mm inside the body: nothing is left of that end, however the outlines are
    /// rounded. Sewn by a part whose body ends there, it would lie on the body of its neighbour.
    /// </summary>
    [Fact]
    public void OfAColumnNoCrumbIsLeftAtAHiddenEnd() =>
        Gen.Select(Gen.Double[-3, 3], Gen.Double[-3, 3])
            .Holds(
                ends =>
                {
                    var leg = Stroke("leg", ends.Item1, ends.Item2);
                    var body = Samples.Rectangle("body", -20, -20, 40, 20 + 8);
                    var left = (SatinShape)Layers.CutAway(new(0, 0, []), [leg, body]).Value[0];
                    var column = Assert.Single(left.Columns);
                    Assert.All(column.Rungs, rung => Assert.InRange(rung.Middle.Y, 6900, 60_000));
                },
                cases: 40
            );

    /// <summary>A column of 3.2 mm that leans a little.</summary>
    private static SatinShape Stroke(string id, double from, double to)
    {
        static Rung Across(double x, double y) =>
            new(Point.FromMillimetres(x - 1.6, y - 0.08), Point.FromMillimetres(x + 1.6, y + 0.08));
        var (start, end) = (Across(from, 0), Across(to, 60));
        return new()
        {
            Id = id,
            Place = new("test.svg", 1, 1),
            Thread = 0,
            Style = new() { RowSpacing = 400 },
            Columns = [new([start, end])],
            Footprint = Polygons.FromRings(
                [new Ring([start.Left, start.Right, end.Right, end.Left])],
                FillRule.NonZero
            ),
        };
    }

    /// <summary>A border of 5 mm along the edge hides all but a rim; a stripe of 5 mm within hides no more than its ends.</summary>
    [Theory]
    [InlineData(95, 5, 95.8)]
    [InlineData(50, 5, 100)]
    [InlineData(50, 6, 100 - 6 + 1.6)]
    public void RowsAreNotBrokenUpByWhatIsNarrow(double left, double width, double sewn)
    {
        var above = Samples.Rectangle("above", left, 0, width, 100);
        var area = Sewn([Samples.Rectangle("ground", 0, 0, 100, 100), above])[0].Area / 1e6;
        Assert.InRange(area / 100, sewn - 0.1, sewn + 0.1);
    }

    /// <summary>Many things are looked at one by one, and leave the same holes as one does.</summary>
    [Fact]
    public void ManyThingsLeaveAHoleEach()
    {
        var many = Enumerable
            .Range(0, 1600)
            .Select(Shape (i) => Samples.Rectangle($"thing-{i}", 5 + (15 * (i % 40)), 5 + (15 * (i / 40)), 9, 9));
        var area = Sewn([Samples.Rectangle("ground", 0, 0, 610, 610), .. many])[0].Area / 1e6;
        var one = Sewn([Samples.Rectangle("ground", 0, 0, 610, 610), Samples.Rectangle("thing", 5, 5, 9, 9)])[0];
        Assert.Equal((610.0 * 610) - area, 1600 * ((610.0 * 610) - (one.Area / 1e6)), 1600 * 0.5);
        Assert.InRange((610.0 * 610) - (one.Area / 1e6), 50, 56);
    }

    /// <summary>Looked at one by one, on any number of threads: what reaches under things is sewn, and always the same.</summary>
    [Fact]
    public void ManyThingsThatLieOverEachOther()
    {
        var things = Enumerable
            .Range(0, 400)
            .Select(Shape (i) => Samples.Rectangle($"thing-{i}", 37 * i % 391, 61 * i % 389, 4 + (i % 9), 4 + (i % 7)));
        ImmutableArray<Shape> drawn = [Samples.Rectangle("ground", 0, 0, 400, 400), .. things];
        Assert.InRange(Cover(drawn, 0).Polygons.Length, 101, 400);
        var (ground, again) = (Ground(1), Ground(4));
        foreach (var part in new[] { ground.Rims, ground.Deep })
            Assert.InRange(Polygons.Subtract(part, ground.Footprint).Area, 0, Splinters);
        Assert.NotEqual(0, ground.Rims.Area);
        Assert.NotEqual(0, ground.Deep.Area);
        Assert.Equal(Points(ground), Points(again));

        FillShape Ground(int jobs) => (FillShape)Layers.CutAway(new(0, 0, []), drawn, jobs).Value[0];

        static IEnumerable<Point> Points(FillShape fill) =>
            from region in new[] { fill.Footprint, fill.Rims, fill.Deep }
            from ring in region.Rings
            from point in ring.Points
            select point;
    }

    /// <summary>By shape; nothing for those that are hidden.</summary>
    private static ImmutableArray<Region> Sewn(ImmutableArray<Shape> drawn)
    {
        var sewn = Layers.CutAway(new(0, 0, []), drawn).Value.ToDictionary(s => s.Id, s => s.Footprint);
        return [.. drawn.Select(s => sewn.GetValueOrDefault(s.Id, Region.Empty))];
    }

    private static Region Cover(ImmutableArray<Shape> drawn, int shape) =>
        Polygons.Union(drawn.Skip(shape + 1).Select(s => s.Footprint));

    private static Region Shown(ImmutableArray<Shape> drawn, int shape) =>
        Polygons.Subtract(drawn[shape].Footprint, Cover(drawn, shape));

    private static Region Twice(ImmutableArray<Region> sewn) =>
        Polygons.Union(
            sewn.SelectMany((ground, i) => sewn.Skip(i + 1).Select(other => Polygons.Intersect(ground, other)))
        );
}
