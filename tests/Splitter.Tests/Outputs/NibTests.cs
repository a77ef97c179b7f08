using Splitter.Outputs.Pictures;

namespace Splitter.Tests.Outputs;

/// <summary>The end of a pen.</summary>
public sealed class NibTests
{
    /// <summary>
    /// Level edges cross no scan line, as those of a very thin pen are. By hand: lines lie 32 apart, the one that follows the
    /// middle 16 below it; three are above it and three below.
    /// </summary>
    [Fact]
    public void LevelEdgesAreCrossedNowhere()
    {
        var spans = new Nib([new(-90, -90), new(90, -90), new(90, 90), new(-90, 90)]).At(0);
        Assert.Equal(-3, spans.First);
        Assert.Equal(Enumerable.Repeat((-90, 90), 6), spans.Lines);
    }
}
