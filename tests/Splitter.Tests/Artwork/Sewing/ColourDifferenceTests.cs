using Splitter.Artwork.Sewing;

namespace Splitter.Tests.Artwork.Sewing;

public sealed class ColourDifferenceTests
{
    /// <summary>The published places come of a white with more digits than the standard's four.</summary>
    private const double Digits = 0.03;

    /// <summary>
    /// CIELAB of sRGB's primaries under D65 as published (B. Lindbloom, "CIE color calculator"; from memory), and as ImageMagick
    /// 6.9.11 has them and the others: <c>convert xc:#ff0000 -colorspace Lab txt:</c>.
    /// </summary>
    [Theory]
    [InlineData("#ffffff", 100, 0, 0)]
    [InlineData("#000000", 0, 0, 0)]
    [InlineData("#ff0000", 53.24, 80.09, 67.20)]
    [InlineData("#00ff00", 87.73, -86.18, 83.18)]
    [InlineData("#0000ff", 32.30, 79.19, -107.86)]
    [InlineData("#f4efe4", 94.55, -0.20, 5.90)]
    [InlineData("#fffaf0", 98.40, -0.03, 5.37)]
    public void ColoursLieWhereTheyArePublished(string colour, double l, double a, double b)
    {
        var lab = ColourDifference.Lab(colour);
        Assert.InRange(lab.L, l - Digits, l + Digits);
        Assert.InRange(lab.A, a - Digits, a + Digits);
        Assert.InRange(lab.B, b - Digits, b + Digits);
    }

    /// <summary>The square root of the sum of the squares of the figures above: 34.49, 166.27 and 15.98 apart.</summary>
    [Fact]
    public void RedAndGreenLieAsFarApartAsTheirPlaces()
    {
        Assert.InRange(ColourDifference.Between("#ff0000", "#00ff00"), 170.52, 170.62);
        Assert.Equal(100, ColourDifference.Between("#000000", "#ffffff"), 0.01);
        Assert.Equal(0, ColourDifference.Between("#14304f", "#14304f"));
    }
}
