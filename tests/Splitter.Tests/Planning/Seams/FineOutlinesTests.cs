using Splitter.Geometry;
using Splitter.Planning.Seams;
using Splitter.Tests.Geometry;

namespace Splitter.Tests.Planning.Seams;

public sealed class FineOutlinesTests
{
    /// <summary>Steps of 30 µm, 21 µm deep, say no more than a straight edge: offset as they are they took minutes.</summary>
    [Fact]
    public void StairsThatNoTapeCanFollowBecomeAnEdge()
    {
        var stairs = InscribedDiscTests.Stairs(steps: 10_000, each: 30);
        Assert.InRange(Points(stairs), 20_000, 20_002);
        Assert.InRange(Points(FineOutlines.Thinned(stairs, 25)), 3, 10);
    }

    /// <summary>Points a millimetre apart are told apart, however little they matter.</summary>
    [Fact]
    public void AnOutlineThatATapeCanFollowStaysAsItIs()
    {
        var stairs = InscribedDiscTests.Stairs(steps: 100, each: Units.Millimetre);
        Assert.Same(stairs, FineOutlines.Thinned(stairs, 5 * Units.Millimetre));
    }

    private static int Points(Region region) => region.Rings.Sum(ring => ring.Points.Length);
}
