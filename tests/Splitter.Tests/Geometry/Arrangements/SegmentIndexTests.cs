using CsCheck;
using Splitter.Geometry;
using Splitter.Geometry.Arrangements;
using Point = Splitter.Geometry.Point;

namespace Splitter.Tests.Geometry.Arrangements;

public sealed class SegmentIndexTests
{
    /// <summary>The engine measures each: whatever is as near is among those that are visited.</summary>
    [Fact]
    public void WhateverIsNearALineIsVisited() =>
        Gen.Select(Places.Array[2, 60], Places, Places, Gen.Int[0, 300])
            .Holds(
                (places, from, to, reach) =>
                {
                    var visited = Near(places, from, to, reach);
                    for (var i = 0; i + 1 < places.Length; i++)
                        if (Distance(places[i], places[i + 1], from, to) <= reach)
                            Assert.Contains(i, visited);
                }
            );

    /// <summary>
    /// Slanted lines 0.7 mm apart, in pieces of 7 mm. The box around one of them meets most pieces of all; near it are
    /// its own 100 and those of two neighbours on either side, and whatever else has boxes in its way.
    /// </summary>
    [Fact]
    public void OfManySlantedLinesInPiecesFewAreVisited()
    {
        Point[] places =
        [
            .. Enumerable
                .Range(0, 500)
                .SelectMany(line =>
                    Enumerable
                        .Range(0, 101)
                        .Select(piece => line % 2 == 0 ? piece : 100 - piece)
                        .Select(piece => new Point((1000 * line) + (5000 * piece), 5000 * piece))
                ),
        ];
        var pieces = Near(places, places[101 * 250], places[(101 * 250) + 100], 800).Count;
        Assert.InRange(pieces, 500, 2500);
    }

    private static List<int> Near(Point[] places, Point from, Point to, int reach)
    {
        var index = new SegmentIndex(
            Array.ConvertAll(places, p => (double)p.X),
            Array.ConvertAll(places, p => (double)p.Y),
            [0, places.Length]
        );
        List<int> visited = [];
        index.EachNear(
            from,
            to,
            reach,
            segment =>
            {
                visited.Add(segment);
                return true;
            }
        );
        return visited;
    }

    private static double Distance(Point a, Point b, Point c, Point d) =>
        NetTopologySuite.Algorithm.DistanceComputer.SegmentToSegment(
            EngineForm.ToCoordinate(a),
            EngineForm.ToCoordinate(b),
            EngineForm.ToCoordinate(c),
            EngineForm.ToCoordinate(d)
        );

    private static readonly Gen<Point> Places = Gen.Select(
        Gen.Int[-2000, 2000],
        Gen.Int[-2000, 2000],
        (x, y) => new Point(x, y)
    );
}
