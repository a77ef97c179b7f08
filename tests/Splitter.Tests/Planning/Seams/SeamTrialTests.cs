using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning.Seams;

namespace Splitter.Tests.Planning.Seams;

public sealed class SeamTrialTests
{
    private static readonly ImmutableArray<Box> Grounds =
    [
        new(0, 0, 120_000, 100_000),
        new(80_000, 0, 200_000, 100_000),
    ];

    private static readonly Box All = new(0, 0, 200_000, 100_000);

    /// <summary>Straight through the middle of a fill: its length, and a twentieth of it for length itself.</summary>
    [Fact]
    public void AFillAllOverShowsTheWholeLength() =>
        Assert.InRange(Shown(All, Samples.Rectangle("fill", 0, 0, 200, 100)), 103, 107);

    [Fact]
    public void OnlyTheWindowCounts() =>
        Assert.InRange(Shown(All with { Bottom = 50_000 }, Samples.Rectangle("fill", 0, 0, 200, 100)), 51, 54);

    /// <summary>A gap of 6 mm that slants from 90 to 110 mm: only its length counts.</summary>
    [Fact]
    public void AGapShowsNothing() =>
        Assert.InRange(
            Shown(
                All,
                Samples.Fill("one", 0, 0, 87, 0, 107, 100, 0, 100),
                Samples.Fill("other", 93, 0, 200, 0, 200, 100, 113, 100)
            ),
            0,
            10
        );

    [Fact]
    public void AMotifThatIsSewnLastHidesASeam() =>
        Assert.InRange(
            Shown(All, Samples.Rectangle("fill", 0, 0, 200, 100), Samples.Rectangle("motif", 85, 10, 30, 80)),
            21,
            40
        );

    private static double Shown(Box window, params ReadOnlySpan<Shape> shapes) =>
        new SeamTrial(Samples.Drawing([.. shapes])).Shown(Grounds, window);
}
