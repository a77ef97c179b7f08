using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning.Seams;

namespace Splitter.Tests.Planning.Seams;

/// <summary>
/// Boundaries of a grid of cells of 1 mm, drawn as letters: the label of each cell, '.' where no field is. Micrometres.
/// </summary>
public sealed class ArcTracerTests
{
    /// <summary>One seam and two outer edges, and the seam belongs to both territories.</summary>
    [Fact]
    public void TwoHalvesShareOneSeam()
    {
        var (arcs, rings) = Trace("AAB", "AAB");
        Assert.Equal(3, arcs.Length);
        var seam = Assert.Single(arcs, arc => arc.IsSeam);
        Assert.Equal((2_000, 2_000), (Length(seam), Math.Abs(seam.Points[0].Y - seam.Points[^1].Y)));
        Assert.All(seam.Points, p => Assert.Equal(2000, p.X));
        Assert.Equal([0, 1], rings.Select(ring => ring.Field).Order());
        // One of them walks it backwards.
        var at = arcs.IndexOf(seam);
        Assert.Equal(
            [false, true],
            rings.SelectMany(r => r.Arcs).Where(a => a.Arc == at).Select(a => a.Forward).Order()
        );
    }

    /// <summary>An island has one boundary, which its surroundings have as a hole.</summary>
    [Fact]
    public void AnIslandIsAHoleOfWhatLiesAround()
    {
        var (arcs, rings) = Trace("AAAA", "ABBA", "AAAA");
        Assert.Equal(2, arcs.Length);
        var shore = Assert.Single(arcs, arc => arc.IsSeam);
        Assert.Equal(6_000, Length(shore));
        Assert.Equal(shore.Points[0], shore.Points[^1]);
        Assert.Equal(new(1000, 1000), shore.Points[0]);
        Assert.Equal([0, 0, 1], rings.Select(ring => ring.Field).Order());
    }

    /// <summary>Four quarters meet in one place: four seams, and four stretches of the outer edge.</summary>
    [Fact]
    public void ArcsEndWhereThreeOrMoreMeet()
    {
        var (arcs, rings) = Trace("AABB", "AABB", "CCDD", "CCDD");
        Assert.Equal(4, arcs.Count(arc => arc.IsSeam));
        Assert.Equal(8, arcs.Length);
        Assert.All(
            arcs.Where(arc => arc.IsSeam),
            arc => Assert.Contains(new Point(2000, 2000), new[] { arc.Points[0], arc.Points[^1] })
        );
        Assert.All(rings, ring => Assert.Equal(3, ring.Arcs.Length));
    }

    /// <summary>Cells that touch at a corner only are walked round one by one.</summary>
    [Fact]
    public void CornersThatTouchDoNotJoin()
    {
        var (arcs, rings) = Trace("AB", "BA");
        Assert.Equal([0, 0, 1, 1], rings.Select(ring => ring.Field).Order());
        Assert.Equal(4, arcs.Count(arc => arc.IsSeam));
    }

    /// <summary>What no field has is outside: a hole in the work is an edge and no seam.</summary>
    [Fact]
    public void GroundOfNobodyIsOutside()
    {
        var (arcs, rings) = Trace("AAA", "A.A", "AAA");
        Assert.Equal(2, arcs.Length);
        Assert.All(arcs, arc => Assert.False(arc.IsSeam));
        Assert.Equal([4_000, 12_000], arcs.Select(Length).Order());
        Assert.Equal([0, 0], rings.Select(ring => ring.Field));
    }

    /// <summary>Every ring closes, has its territory on its right, and rings together go round each territory's area.</summary>
    [Theory]
    [InlineData("AAB ACB CCB")]
    [InlineData("ABA BAB ABA")]
    [InlineData("A.B AAB .CB")]
    [InlineData("AAAA ABBA ABCA AAAA")]
    public void RingsGoRoundTheirTerritories(string cells)
    {
        var rows = cells.Split(' ');
        var (arcs, rings) = Trace(rows);
        foreach (var label in rows.SelectMany(r => r).Where(c => c != '.').Distinct())
        {
            var area = rings.Where(r => r.Field == label - 'A').Sum(ring => Area(Walked(ring, arcs)));
            Assert.Equal(rows.Sum(r => r.Count(c => c == label)) * 1_000_000.0, area);
        }
    }

    private static (ImmutableArray<SeamArc> Arcs, ImmutableArray<ArcRing> Rings) Trace(params string[] rows)
    {
        var grid = new SeamGrid([new(0, 0, rows[0].Length * 1000, rows.Length * 1000)], 1000);
        return ArcTracer.Trace(grid, [.. rows.SelectMany(r => r).Select(c => c == '.' ? ArcTracer.Outside : c - 'A')]);
    }

    private static List<Point> Walked(ArcRing ring, ImmutableArray<SeamArc> arcs)
    {
        var points = new List<Point>();
        foreach (var (arc, forward) in ring.Arcs)
        {
            var way = forward ? arcs[arc].Points : [.. arcs[arc].Points.Reverse()];
            if (points.Count > 0)
                Assert.Equal(points[^1], way[0]);
            points.AddRange(way);
        }
        Assert.Equal(points[0], points[^1]);
        return points;
    }

    /// <summary>Positive for what lies on the right, y down.</summary>
    private static double Area(List<Point> points) =>
        Enumerable
            .Range(1, points.Count - 1)
            .Sum(i => (((double)points[i - 1].X * points[i].Y) - ((double)points[i].X * points[i - 1].Y)) / 2);

    private static int Length(SeamArc arc) =>
        Enumerable.Range(1, arc.Points.Length - 1).Sum(i => (int)arc.Points[i - 1].DistanceTo(arc.Points[i]));
}
