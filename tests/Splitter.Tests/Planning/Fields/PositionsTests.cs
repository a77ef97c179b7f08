using Splitter.Geometry;
using Splitter.Planning.Fields.Covering;

namespace Splitter.Tests.Planning.Fields;

public sealed class PositionsTests
{
    /// <summary>A chain of fields goes forwards, or not at all: none is wider than what they are to share.</summary>
    [Theory]
    [InlineData(19_800)]
    [InlineData(20_000)]
    [InlineData(20_001)]
    [InlineData(20_100)]
    public void NarrowFieldsMakeNoEndlessChain(int ground)
    {
        var places = Positions.Along(0, 30_000, [0], [30_000], [ground], [0], 20_000, 20_000);
        Assert.InRange(Assert.Single(places).Length, 2, 30_000 / Units.TapeStep);
        Assert.All(places[0], at => Assert.InRange(at, 0, 30_000 - ground + Units.TapeStep));
    }
}
