using Splitter.Artwork.Columns;
using Splitter.Geometry;
using Point = Splitter.Geometry.Point;

namespace Splitter.Tests.Artwork.Columns;

public class OutlineColumnsTests
{
    private const int Widest = 8000;

    public static TheoryData<string> Shapes =>
        [
            "bar",
            "tapered",
            "slanted",
            "ring",
            "square ring",
            "L",
            "T",
            "X",
            "H",
            "E",
            "N",
            "V",
            "Z",
            "Y",
            "K",
            "A",
            "star",
            "star of seven",
            "crescent",
            "comma",
            "sine",
            "leaf",
            "round bar",
            "plus",
            "eight",
            "triangle",
        ];

    internal static Region Shape(string name) =>
        name switch
        {
            "bar" => OutlineSamples.Of("0 0, 30 0, 30 4, 0 4"),
            "tapered" => OutlineSamples.Of("0 0, 30 1.5, 30 2.5, 0 5"),
            "slanted" => OutlineSamples.Of("0 0, 20 0, 23 4, 3 4"),
            "ring" => Polygons.FromRings(
                [OutlineSamples.Circle(0, 0, 10), OutlineSamples.Circle(0, 0, 6)],
                FillRule.EvenOdd
            ),
            "square ring" => OutlineSamples.Of("0 0, 20 0, 20 20, 0 20", "4 4, 4 16, 16 16, 16 4"),
            "L" => OutlineSamples.Of("0 0, 4.4 0, 4.4 23.6, 15 23.6, 15 28, 0 28"),
            "T" => OutlineSamples.Of("0 0, 18 0, 18 4.4, 11.2 4.4, 11.2 28, 6.8 28, 6.8 4.4, 0 4.4"),
            "X" => OutlineSamples.Of("0 0, 5 0, 10 9, 15 0, 20 0, 12.5 14, 20 28, 15 28, 10 19, 5 28, 0 28, 7.5 14"),
            "H" => OutlineSamples.Of(
                "0 0, 4.4 0, 4.4 12, 14.6 12, 14.6 0, 19 0, 19 28, 14.6 28, 14.6 16.4, 4.4 16.4, 4.4 28, 0 28"
            ),
            "E" => OutlineSamples.Of(
                "0 0, 15.5 0, 15.5 4.4, 4.4 4.4, 4.4 11.9, 13.6 11.9, 13.6 16.1, 4.4 16.1, 4.4 23.6, 15.5 23.6, 15.5 28, 0 28"
            ),
            "N" => OutlineSamples.Of("0 0, 4.5 0, 15 20, 15 0, 19.5 0, 19.5 28, 15 28, 4.5 8, 4.5 28, 0 28"),
            "V" => OutlineSamples.Of("0 0, 4.6 0, 11 21, 17.4 0, 22 0, 13.2 28, 8.8 28"),
            "Z" => OutlineSamples.Of("0 0, 18 0, 18 4.4, 6 23.6, 18 23.6, 18 28, 0 28, 0 23.6, 12 4.4, 0 4.4"),
            "Y" => OutlineSamples.Of("0 0, 4.9 0, 10.5 10.6, 16.1 0, 21 0, 12.6 15.4, 12.6 28, 8.4 28, 8.4 15.4"),
            "K" => OutlineSamples.Of(
                "0 0, 4.4 0, 4.4 11, 13 0, 18.6 0, 9.4 11.8, 19 28, 13.8 28, 6.6 15.4, 4.4 18.2, 4.4 28, 0 28"
            ),
            "A" => OutlineSamples.Of(
                "9.1 0, 13.9 0, 23 28, 18.5 28, 16.45 21.7, 6.55 21.7, 4.5 28, 0 28",
                "11.5 6.4, 7.9 17.5, 15.1 17.5"
            ),
            "star" => OutlineSamples.Star(8, 3.1, 5),
            "star of seven" => OutlineSamples.Star(9, 3.4, 7),
            "crescent" => Polygons.Subtract(
                Polygons.FromRings([OutlineSamples.Circle(0, 0, 10)], FillRule.NonZero),
                Polygons.FromRings([OutlineSamples.Circle(4, -3, 8.5)], FillRule.NonZero)
            ),
            "comma" => Polygons.Union(
                Polygons.FromRings([OutlineSamples.Circle(0, 0, 3)], FillRule.NonZero),
                Polygons.Subtract(
                    Polygons.FromRings([OutlineSamples.Circle(-6, 0, 9)], FillRule.NonZero),
                    Polygons.Union(
                        Polygons.FromRings([OutlineSamples.Circle(-7.5, -1.5, 7.5)], FillRule.NonZero),
                        OutlineSamples.Of("-20 -20, 20 -20, 20 0, -20 0")
                    )
                )
            ),
            "sine" => Polygons.Stroke(
                new Polyline([
                    .. Enumerable.Range(0, 200).Select(i => Point.FromMillimetres(i * 0.2, 4 * Math.Sin(i * 0.1))),
                ]),
                3000,
                Cap.Butt,
                Join.Round
            ),
            "leaf" => Polygons.Intersect(
                Polygons.FromRings([OutlineSamples.Circle(0, 0, 12)], FillRule.NonZero),
                Polygons.FromRings([OutlineSamples.Circle(0, 19, 12)], FillRule.NonZero)
            ),
            "round bar" => Polygons.Stroke(new Polyline([new(0, 0), new(20000, 5000)]), 4000, Cap.Round, Join.Round),
            "plus" => OutlineSamples.Of("8 0, 12 0, 12 8, 20 8, 20 12, 12 12, 12 20, 8 20, 8 12, 0 12, 0 8, 8 8"),
            "eight" => Polygons.Union(
                Polygons.FromRings([OutlineSamples.Circle(0, 0, 7), OutlineSamples.Circle(0, 0, 4)], FillRule.EvenOdd),
                Polygons.FromRings([OutlineSamples.Circle(0, 11, 7), OutlineSamples.Circle(0, 11, 4)], FillRule.EvenOdd)
            ),
            "triangle" => OutlineSamples.Of("0 0, 6 0, 3 14"),
            _ => throw new ArgumentOutOfRangeException(nameof(name), name, "no such shape"),
        };

    [Theory]
    [MemberData(nameof(Shapes))]
    public void Columns_cover_the_ground_and_little_beside(string name)
    {
        var ground = Shape(name);
        var columns = OutlineColumns.From(ground, Widest);
        OutlineSamples.Picture(name, (ground, columns));
        Assert.NotEmpty(columns);
        ColumnChecks.Fit(ground, columns);
        ColumnChecks.KeepOrder(columns);
    }

    [Theory]
    [InlineData("bar", 1)]
    [InlineData("ring", 1)]
    [InlineData("sine", 1)]
    [InlineData("crescent", 1)]
    [InlineData("L", 2)]
    [InlineData("T", 2)]
    [InlineData("X", 3)]
    [InlineData("plus", 3)]
    [InlineData("Y", 2)]
    [InlineData("H", 3)]
    [InlineData("N", 3)]
    [InlineData("star", 5)]
    [InlineData("E", 4)]
    [InlineData("square ring", 4)]
    public void One_column_runs_through_a_joint_and_none_through_a_star(string name, int count) =>
        Assert.Equal(count, OutlineColumns.From(Shape(name), Widest).Length);

    [Fact]
    public void A_ring_is_one_closed_column()
    {
        var column = Assert.Single(OutlineColumns.From(Shape("ring"), Widest));
        Assert.Equal(column.Rungs[0], column.Rungs[^1]);
        // Between the circles of radius 10 and 6 mm, whose polygons lie up to 4 um inside.
        Assert.All(column.Rungs, r => Assert.InRange(r.Width, 3950, 4100));
        Assert.All(column.Rungs, r => Assert.InRange(new Point(0, 0).DistanceTo(r.Middle), 7950, 8050));
    }

    [Fact]
    public void Rungs_of_a_bar_stand_square_and_reach_into_its_corners()
    {
        var column = Assert.Single(OutlineColumns.From(Shape("bar"), Widest));
        Assert.All(column.Rungs, r => Assert.InRange(Math.Abs(r.Left.X - r.Right.X), 0, 60));
        Assert.All(column.Rungs, r => Assert.Equal(4000, Math.Abs(r.Left.Y - r.Right.Y)));
        Assert.Equal([0, 30000], new[] { column.Rungs[0].Left.X, column.Rungs[^1].Left.X }.Order());
    }

    [Fact]
    public void Left_is_left_of_the_way()
    {
        foreach (var name in new[] { "bar", "ring", "crescent", "T", "star" })
        foreach (var column in OutlineColumns.From(Shape(name), Widest))
        {
            var (on, rung) = (column.Rungs[1].Middle - column.Rungs[0].Middle, column.Rungs[0]);
            var across = rung.Right - rung.Left;
            // With y down, right is a quarter turn clockwise from the way.
            Assert.True(((double)on.X * across.Y) - ((double)on.Y * across.X) > 0, name);
        }
    }

    [Theory]
    [InlineData("bar", 4000, true)]
    [InlineData("bar", 3900, false)]
    [InlineData("ring", 4020, true)]
    [InlineData("ring", 3900, false)]
    // A stem of 4.4 mm on a bar of 4.4 mm holds a disc of 1.25 times that.
    [InlineData("T", 5520, true)]
    [InlineData("T", 5400, false)]
    [InlineData("crescent", 3000, false)]
    public void Ground_wider_than_the_bound_somewhere_has_no_columns(string name, int widest, bool fits) =>
        Assert.Equal(fits, !OutlineColumns.From(Shape(name), widest).IsEmpty);

    [Fact]
    public void Ground_that_columns_do_not_fit_is_left_to_rows()
    {
        Assert.Empty(OutlineColumns.From(Region.Empty, Widest));
        Assert.Empty(OutlineColumns.From(OutlineSamples.Of("0 0, 200 0, 200 150, 0 150"), Widest));
        // A comb whose teeth are as short as they are wide: narrow everywhere, and nothing that a column follows.
        var teeth = string.Join(
            ", ",
            Enumerable.Range(0, 8).Select(i => $"{i * 4} 0, {(i * 4) + 2} 0, {(i * 4) + 2} 1.2, {(i * 4) + 4} 1.2")
        );
        var comb = OutlineSamples.Of(teeth + ", 32 2.4, 0 2.4");
        var columns = OutlineColumns.From(comb, Widest);
        if (!columns.IsEmpty)
            ColumnChecks.Fit(comb, columns);
    }

    /// <summary>
    /// 300 spikes 120 mm long, 72 m of outline: over a million points at the distance that such thin ones ask for. Their
    /// triangles took more than a minute and a gigabyte; that this ends is the test.
    /// </summary>
    [Fact]
    public void AThicketOfSpikesIsLeftToRows()
    {
        var spikes = Samples.Ground([
            .. Enumerable
                .Range(0, 600)
                .Select(i => (Angle: Math.PI * i / 300, Far: i % 2 == 0 ? 20 : 140))
                .SelectMany(p => new[] { p.Far * Math.Cos(p.Angle), p.Far * Math.Sin(p.Angle) }),
        ]);
        Assert.Empty(OutlineColumns.From(spikes, Widest));
    }

    [Fact]
    public void Several_pieces_are_sewn_one_after_the_other()
    {
        var both = Polygons.Union(Shape("bar"), OutlineSamples.Of("0 10, 30 10, 30 13, 0 13"));
        Assert.Equal(2, OutlineColumns.From(both, Widest).Length);
    }

    /// <summary>
    /// What is looked at, is made first: memory counts it. Where each end looks at the columns of all teeth it grows with
    /// the square of their number.
    /// </summary>
    [Fact]
    public void TeethOfACombLookAtTheirNeighboursAlone() =>
        Assert.InRange(Allocated(Comb(teeth: 96)) / (double)Allocated(Comb(teeth: 24)), 3, 6);

    private static long Allocated(Region ground)
    {
        var before = GC.GetAllocatedBytesForCurrentThread();
        OutlineColumns.From(ground, Widest);
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }

    /// <summary>Teeth of 1 x 10 mm, 1.6 mm apart, on a bar 2 mm high.</summary>
    private static Region Comb(int teeth) =>
        Polygons.Union(
            Enumerable
                .Range(0, teeth)
                .Select(i => 1.6 * i)
                .Select(x => Samples.Ground(x, 0, x + 1, 0, x + 1, 12, x, 12))
                .Append(Samples.Ground(0, 0, 1.6 * teeth, 0, 1.6 * teeth, 2, 0, 2))
        );
}
