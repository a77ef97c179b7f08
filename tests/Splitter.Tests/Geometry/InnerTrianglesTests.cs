using CsCheck;
using NetTopologySuite.Geometries;
using NetTopologySuite.Triangulate;
using Splitter.Geometry;
using Point = Splitter.Geometry.Point;

namespace Splitter.Tests.Geometry;

public sealed class InnerTrianglesTests
{
    /// <summary>
    /// Judged by the engine's own list of triangles, which takes longer: the same, each once, from its smallest corner. Many
    /// points of a small lattice lie on one line or one circle.
    /// </summary>
    [Theory]
    [InlineData(12)]
    [InlineData(1000)]
    public void TrianglesAreTheEnginesOwn(int side) =>
        Gen.Select(Gen.Int[0, side], Gen.Int[0, side], (x, y) => new Point(x, y))
            .HashSet[3, 120]
            .Holds(
                set =>
                {
                    var points = set.Order().ToList();
                    var builder = new DelaunayTriangulationBuilder();
                    builder.SetSites(points.ConvertAll(p => new Coordinate(p.X, p.Y)));
                    var expected =
                        from corners in builder.GetSubdivision().GetTriangleCoordinates(false)
                        let at = corners.Take(3).Select(c => points.IndexOf(new((int)c.X, (int)c.Y))).ToArray()
                        let turn = InnerTriangles.Cross(points[at[0]], points[at[1]], points[at[2]])
                        where turn != 0
                        let clockwise = turn > 0 ? at : [.. at.Reverse()]
                        let first = Array.IndexOf(clockwise, clockwise.Min())
                        orderby clockwise[first], clockwise[(first + 1) % 3], clockwise[(first + 2) % 3]
                        select (clockwise[first], clockwise[(first + 1) % 3], clockwise[(first + 2) % 3]);
                    Assert.Equal(expected, InnerTriangles.Triangulated(points));
                },
                cases: 200
            );
}
