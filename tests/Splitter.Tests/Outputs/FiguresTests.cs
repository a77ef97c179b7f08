using Splitter.Outputs.Pictures;

namespace Splitter.Tests.Outputs;

public sealed class FiguresTests
{
    [Theory]
    [InlineData(0, "0")]
    [InlineData(1, "0.25")]
    [InlineData(3, "0.75")]
    [InlineData(4, "1")]
    [InlineData(7, "2")]
    [InlineData(5000, "1 250")]
    public void LessThanASquareMillimetreIsNotNone(int quarters, string text) =>
        Assert.Equal(text, Figures.QuarterMillimetres(quarters));
}
