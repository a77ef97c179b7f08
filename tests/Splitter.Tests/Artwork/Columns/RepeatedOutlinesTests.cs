using Splitter.Artwork.Columns;
using Splitter.Geometry;

namespace Splitter.Tests.Artwork.Columns;

public class RepeatedOutlinesTests
{
    private const int Widest = 8000;

    [Theory]
    [InlineData("star")]
    [InlineData("square ring")]
    public void What_is_drawn_again_elsewhere_has_the_same_columns_there(string name)
    {
        var (outlines, by) = (new RepeatedOutlines(), new Point(12_345, 6_789));
        var shape = OutlineColumnsTests.Shape(name);
        var first = outlines.Columns(shape, Widest);
        var again = outlines.Columns(Moved(shape, by), Widest);
        Assert.NotEmpty(first);
        Assert.Equal(
            first.Select(c => c.Rungs.Select(r => (r.Left + by, r.Right + by))),
            again.Select(c => c.Rungs.Select(r => (r.Left, r.Right)))
        );
        // The way that is found without any other before lies within a micrometre of it: roundings.
        var alone = OutlineColumns.From(Moved(shape, by), Widest);
        Assert.Equal(alone.Length, again.Length);
        foreach (var (a, b) in alone.Zip(again))
        {
            Assert.Equal(a.Rungs.Length, b.Rungs.Length);
            foreach (var (one, other) in a.Rungs.Zip(b.Rungs))
            {
                Assert.InRange(one.Left.DistanceTo(other.Left), 0, 1.5);
                Assert.InRange(one.Right.DistanceTo(other.Right), 0, 1.5);
            }
        }
    }

    [Fact]
    public void Other_outlines_and_other_widths_are_looked_at_anew()
    {
        var outlines = new RepeatedOutlines();
        foreach (var name in new[] { "square ring", "bar", "L" })
        foreach (var widest in new[] { Widest, 3000 })
            Assert.Equal(
                OutlineColumns.From(OutlineColumnsTests.Shape(name), widest).Select(c => c.Rungs.ToArray()),
                outlines.Columns(OutlineColumnsTests.Shape(name), widest).Select(c => c.Rungs.ToArray())
            );
    }

    private static Region Moved(Region region, Point by) =>
        Polygons.FromRings(region.Rings.Select(r => new Ring([.. r.Points.Select(p => p + by)])), FillRule.EvenOdd);
}
