using CsCheck;
using Splitter.Geometry;

namespace Splitter.Tests.Geometry;

public sealed class SimplificationTests
{
    [Fact]
    public void OutlinesKeepTheirSidesAndLieWhereTheyLay() =>
        Gen.Select(Ground, Gen.OneOf(Gen.Const(3), Gen.Const(50), Gen.Const(400)))
            .Holds(
                (ground, tolerance) =>
                {
                    var simple = Polygons.Simplify(ground, tolerance);
                    Assert.True(EngineForm.ToNts(simple).IsValid, "it crosses itself");
                    Assert.Equal(ground.Rings.Count(), simple.Rings.Count());
                    foreach (var (ring, kept) in ground.Rings.OrderBy(r => r.Points[0]).Zip(Sorted(simple)))
                    {
                        Assert.Empty(kept.Points.Except(ring.Points));
                        var line = EngineForm.ToLinear(kept);
                        Assert.All(
                            ring.Points,
                            p =>
                                Assert.InRange(
                                    line.Distance(EngineForm.Factory.CreatePoint(EngineForm.ToCoordinate(p))),
                                    0,
                                    tolerance + 1e-6
                                )
                        );
                    }
                },
                cases: 200
            );

    /// <summary>By hand: of a square with points on its sides its corners are left.</summary>
    [Fact]
    public void PointsOnStraightLinesAreLeftOut() =>
        Assert.Equal(
            Samples.Ground(0, 0, 4, 0, 4, 4, 0, 4).Rings,
            Polygons.Simplify(Samples.Ground(0, 0, 1, 0, 2, 0, 4, 0, 4, 3, 4, 4, 3, 4, 0, 4, 0, 2), 1).Rings
        );

    /// <summary>By hand: a dent that another outline reaches into stays, though it is not deeper than the tolerance.</summary>
    [Fact]
    public void NothingIsMovedOverAnotherOutline()
    {
        var dented = Samples.Ground(0, 0, 10, 0, 10, 10, 5.1, 10, 5, 9.8, 4.9, 10, 0, 10);
        var thorn = Samples.Ground(5, 9.9, 6, 12, 4, 12);
        Assert.Equal(4, Polygons.Simplify(dented, 300).Polygons[0].Outer.Points.Length);
        var both = Polygons.Union(dented, thorn);
        Assert.Equal(both.Rings, Polygons.Simplify(both, 300).Rings);
    }

    /// <summary>
    /// All corners of these stairs stay, since steps are 42 µm deep. The farthest of each stretch is the next one to its
    /// end: looked for each time it was half the square of their number, 5,000 million.
    /// </summary>
    [Fact]
    public void CornersOfFineStairsAreLookedAtFewTimes()
    {
        var stairs = InscribedDiscTests.Stairs(steps: 50_000, each: 60);
        var simplification = new Simplification(stairs, 25);
        Assert.Equal(stairs.Rings, simplification.Simplified().Rings);
        Assert.InRange(simplification.Looks, 1_000_000, 10_000_000);
    }

    private static IEnumerable<Ring> Sorted(Region region) => region.Rings.OrderBy(r => r.Points[0]);

    /// <summary>Stars without other stars, with many fine teeth.</summary>
    private static readonly Gen<Region> Ground =
        from stars in PolygonsTests.Star.Array[1, 3]
        from holes in PolygonsTests.Star.Array[1, 3]
        from width in Gen.Int[100, 3000]
        select Polygons.Offset(Polygons.Subtract(Polygons.Union(stars), Polygons.Union(holes)), width);
}
