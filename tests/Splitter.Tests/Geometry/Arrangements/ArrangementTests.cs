using CsCheck;
using NetTopologySuite.Geometries.Prepared;
using NetTopologySuite.Geometries.Utilities;
using NetTopologySuite.Operation.Distance;
using NetTopologySuite.Operation.Overlay;
using NetTopologySuite.Operation.OverlayNG;
using Splitter.Geometry;
using Splitter.Geometry.Arrangements;
using Nts = NetTopologySuite.Geometries;

namespace Splitter.Tests.Geometry.Arrangements;

/// <summary>Against NetTopologySuite's own overlay with its own noder, which goes by the same rule of pixels.</summary>
public sealed class ArrangementTests
{
    /// <summary>
    /// Outlines of 100 mm hardly ever pass the very corner of a pixel: every vertex is the same. (Where one does, the engine
    /// may err: it bends a segment to where it crosses another one, in floating point, before it asks for pixels.)
    /// </summary>
    [Fact]
    public void VerticesAreThoseOfTheEnginesOwnOverlay() =>
        Gen.Select(Outline(100_000, 1), Outline(100_000, 1))
            .Holds(
                (a, b) =>
                {
                    Assert.Equal(Theirs(a, b, SpatialFunction.Intersection), Text(Polygons.Intersect(a, b)));
                    Assert.Equal(Theirs(a, b, SpatialFunction.Union), Text(Polygons.Union(a, b)));
                    Assert.Equal(Theirs(a, b, SpatialFunction.Difference), Text(Polygons.Subtract(a, b)));
                },
                cases: 300
            );

    /// <summary>Corners so close together that most pixels are hot, and many segments pass corners of pixels.</summary>
    [Fact]
    public void CrowdedGroundIsValidAndMovedByNoMoreThanAPixel() =>
        Gen.Select(Crowded, Crowded)
            .Holds(
                (a, b) =>
                {
                    var far = FarPoints(a, b);
                    AssertIs(Polygons.Intersect(a, b), far, (inA, inB) => inA && inB);
                    AssertIs(Polygons.Union(a, b), far, (inA, inB) => inA || inB);
                    AssertIs(Polygons.Subtract(a, b), far, (inA, inB) => inA && !inB);
                },
                cases: 40
            );

    /// <summary>Whichever line comes first, and wherever each begins.</summary>
    [Fact]
    public void TheOrderOfTheInputMattersNot() =>
        Gen.Select(Gen.OneOf(Crowded, Outline(1000, 1)).Where(r => !r.IsEmpty).Array[2, 5], Gen.Int[0, 1000])
            .Holds(
                (regions, turn) =>
                {
                    var turned = regions
                        .Reverse()
                        .Select(r => new Region([
                            .. r
                                .Polygons.Reverse()
                                .Select(p => new Polygon(Turned(p.Outer, turn), [.. p.Holes.Reverse()])),
                        ]));
                    Assert.Equal(Text(Polygons.Union(regions)), Text(Polygons.Union(turned)));
                },
                cases: 300
            );

    /// <summary>By hand: a square whose hole touches it at a corner, and two squares that touch at one.</summary>
    [Fact]
    public void RingsThatTouchAreRingsOfTheirOwn()
    {
        var square = Samples.Ground(0, 0, 4, 0, 4, 4, 0, 4);
        var hole = Polygons.Subtract(square, Samples.Ground(0, 0, 3, 1, 1, 3));
        Assert.Equal("0,0 4000,0 4000,4000 0,4000\n0,0 1000,3000 3000,1000", Text(hole));
        var two = Polygons.Union(square, Samples.Ground(4, 4, 8, 4, 8, 8, 4, 8));
        Assert.Equal(2, two.Polygons.Length);
        Assert.All(two.Polygons, p => Assert.Equal(16e6, p.Area));
    }

    /// <summary>Squares in squares, ten deep and four side by side: each hole lies in its own.</summary>
    [Fact]
    public void HolesLieInTheirOwnPolygons()
    {
        var rings =
            from x in new[] { 0, 50 }
            from y in new[] { 0, 50 }
            from depth in Enumerable.Range(0, 20)
            select new Ring([
                Point.FromMillimetres(x + depth, y + depth),
                Point.FromMillimetres(x + 45 - depth, y + depth),
                Point.FromMillimetres(x + 45 - depth, y + 45 - depth),
                Point.FromMillimetres(x + depth, y + 45 - depth),
            ]);
        var ground = Polygons.FromRings(rings, FillRule.EvenOdd);
        Assert.Equal(40, ground.Polygons.Length);
        Assert.All(ground.Polygons, p => Assert.Equal(p.Outer.Bounds.Grown(-1000), Assert.Single(p.Holes).Bounds));
    }

    /// <summary>
    /// Of 200 rings around each other only those are led through a window that come near it, and for the others together
    /// what is left is what lies in the middle: ground or none. Straight lines of 200 rings crossed each other at every
    /// corner of the window.
    /// </summary>
    [Theory]
    [InlineData(200, 0)]
    [InlineData(201, 1)]
    public void RingsAroundAWindowAreOneOrNone(int rings, int left)
    {
        var around = Polygons.FromRings(
            Enumerable
                .Range(0, rings)
                .Select(i => Region.Of(new Box(0, 0, 0, 0).Grown(5000 + (1000 * i))).Polygons[0].Outer),
            FillRule.EvenOdd
        );
        var thing = Samples.Ground(-1, -1, 1, -1, 1, 1, -1, 1);
        Assert.Equal(left + 1, new Outlines().Add(around, Winding.OfFirst, thing.Bounds).Starts.Count);
        Assert.Equal(left == 1 ? thing.Rings : [], Polygons.Intersect(around, thing).Rings);
        Assert.Equal(left == 1 ? [] : thing.Rings, Polygons.Subtract(thing, around).Rings);
    }

    private static Ring Turned(Ring ring, int by) =>
        new([.. ring.Points.Select((_, i) => ring.Points[(i + by) % ring.Points.Length])]);

    private static string Theirs(Region a, Region b, SpatialFunction function)
    {
        var grid = new Nts.PrecisionModel(1);
        var found = OverlayNG.Overlay(EngineForm.ToNts(a), EngineForm.ToNts(b), function, grid);
        return Text(
            Region.Sorted(
                PolygonExtracter
                    .GetPolygons(found)
                    .Cast<Nts.Polygon>()
                    .Where(p => !p.IsEmpty)
                    .Select(p => new Polygon(
                        Normal(p.Shell, isHole: false),
                        [.. p.Holes.Select(hole => Normal(hole, isHole: true)).OrderBy(r => r.Points[0])]
                    ))
            )
        );
    }

    private static Ring Normal(Nts.LinearRing ring, bool isHole)
    {
        var points = ring.Coordinates.Skip(1).Select(c => new Point((int)c.X, (int)c.Y));
        var turned = new Ring([.. ring.IsCCW == isHole ? points.Reverse() : points]);
        return Turned(turned, turned.Points.IndexOf(turned.Points.Min()));
    }

    private static string Text(Region region) =>
        string.Join("\n", region.Rings.Select(r => string.Join(' ', r.Points.Select(p => $"{p.X},{p.Y}"))));

    private static void AssertIs(
        Region result,
        IReadOnlyList<(Nts.Point At, bool InA, bool InB)> far,
        Func<bool, bool, bool> both
    )
    {
        var nts = EngineForm.ToNts(result);
        Assert.True(nts.IsValid, nts.AsText());
        var ground = PreparedGeometryFactory.Prepare(nts);
        Assert.All(far, point => Assert.Equal(both(point.InA, point.InB), ground.Contains(point.At)));
    }

    /// <summary>Points further than the half diagonal of a pixel from all outlines lie in what they lay in.</summary>
    private static List<(Nts.Point At, bool InA, bool InB)> FarPoints(Region a, Region b)
    {
        var (ntsA, ntsB) = (EngineForm.ToNts(a), EngineForm.ToNts(b));
        var outlines = new IndexedFacetDistance(ntsA.Boundary.Union(ntsB.Boundary));
        var box = a.Bounds.Joined(b.Bounds);
        return
        [
            .. from x in Enumerable.Range(box.Left - 1, box.Width + 2)
            from y in Enumerable.Range(box.Top - 1, box.Height + 2)
            let point = EngineForm.Floating.CreatePoint(new Nts.Coordinate(x + 0.4, y + 0.3))
            where outlines.Distance(point) > 0.708
            select (point, ntsA.Contains(point), ntsB.Contains(point)),
        ];
    }

    private static readonly Gen<Region> Crowded = Gen.OneOf(Outline(12, 1), Outline(16, 2), Outline(30, 3));

    /// <summary>Any ring with corners on a lattice.</summary>
    private static Gen<Region> Outline(int side, int step) =>
        from points in Gen.Select(Gen.Int[0, side / step], Gen.Int[0, side / step]).Array[3, 24]
        select Polygons.FromRings(
            [new Ring([.. points.Select(p => new Point(p.Item1 * step, p.Item2 * step))])],
            FillRule.EvenOdd
        );
}
