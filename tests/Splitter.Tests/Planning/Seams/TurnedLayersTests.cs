using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Seams;

namespace Splitter.Tests.Planning.Seams;

public sealed class TurnedLayersTests
{
    /// <summary>A motif of 8 x 8 mm lies 2 mm left and 6 mm right of the border of two territories.</summary>
    private static ImmutableArray<TurnedLayer> Find(int motifSewnBy) =>
        TurnedLayers.Find(
            Samples.Drawing(Samples.Rectangle("sky", 0, 0, 100, 50), Samples.Rectangle("star", 48, 20, 8, 8)),
            [Region.Of(new(0, 0, 50_000, 50_000)), Region.Of(new(50_000, 0, 100_000, 50_000))],
            [null, motifSewnBy]
        );

    [Fact]
    public void AMotifThatIsSewnBeforeTheGroundUnderItIsFound()
    {
        var turned = Assert.Single(Find(motifSewnBy: 0));
        Assert.Equal((1, 0, 0, 1), (turned.Upper, turned.Lower, turned.First, turned.Then));
        Assert.Equal(6 * 8 * 1e6, turned.Area);
        Assert.Equal(new Point(53_000, 24_000), turned.At);
    }

    [Fact]
    public void AMotifThatIsSewnLastLiesOnTop() => Assert.Empty(Find(motifSewnBy: 1));
}
