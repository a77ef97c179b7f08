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

    /// <summary>
    /// Fields begin on the tape's grid, 0.03 mm past whole tenths here: the first no later than the drawing, and the last ends
    /// no sooner.
    /// </summary>
    [Theory]
    [InlineData(0, 250_000)]
    [InlineData(10, 250_045)]
    [InlineData(30, 249_990)]
    [InlineData(77, 250_099)]
    public void PlacesLieOnTheTapesGridAndReachBothEnds(int from, int to)
    {
        var places = Positions.Along(from, to, [from], [to], [100_000], [30], 20_000, 20_000)[0];
        Assert.All(places, at => Assert.Equal(30, (at + Units.TapeStep) % Units.TapeStep));
        Assert.InRange(places[0], from - Units.TapeStep + 1, from);
        Assert.InRange(places[^1] + 100_000, to, to + Units.TapeStep - 1);
    }

    /// <summary>The least of those that lie together stays: within 0.1 mm, and within twice that until they are few enough.</summary>
    [Theory]
    [InlineData(9, "0 50 100 150 300 1000")]
    [InlineData(4, "0 150 300 1000")]
    [InlineData(3, "0 300 1000")]
    [InlineData(1, "0")]
    public void NearPlacesAreMerged(int most, string merged) =>
        Assert.Equal(merged, string.Join(' ', Positions.Merged([0, 50, 100, 150, 300, 1000], most)));
}
