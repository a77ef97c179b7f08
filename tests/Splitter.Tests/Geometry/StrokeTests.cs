using Splitter.Geometry;

namespace Splitter.Tests.Geometry;

/// <summary>The ground of strokes, in whole squares: a bend of 90 degrees, two arms of 10 mm, 2 mm wide.</summary>
public class StrokeTests
{
    private static readonly Polyline Bend = new([new(0, 0), new(10_000, 0), new(10_000, 10_000)]);

    /// <summary>
    /// Arms 20 + 20, less the square millimetre that both cover, plus the corner: a square for the mitre, half of it for
    /// the bevel. The mitre is 1.414 widths long (SVG 1.1, 11.4): below that limit it is a bevel, not a shorter mitre.
    /// </summary>
    [Theory]
    [InlineData(4, 40)]
    [InlineData(1.42, 40)]
    [InlineData(1.41, 39.5)]
    [InlineData(1, 39.5)]
    public void A_mitre_beyond_its_limit_is_a_bevel(double limit, double squareMillimetres) =>
        Assert.Equal(squareMillimetres * 1e6, Polygons.Stroke(Bend, 2000, Cap.Butt, Join.Mitre, limit).Area, 1.0);

    /// <summary>A closed square of 10 mm has four mitres: 12 squared less 8 squared.</summary>
    [Fact]
    public void A_closed_path_has_a_mitre_at_its_start()
    {
        var square = new Polyline([new(0, 0), new(10_000, 0), new(10_000, 10_000), new(0, 10_000), new(0, 0)]);
        Assert.Equal(80e6, Polygons.Stroke(square, 2000, Cap.Butt, Join.Mitre, 4).Area, 1.0);
    }
}
