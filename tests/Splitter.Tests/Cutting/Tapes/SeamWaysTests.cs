using System.Collections.Immutable;
using Splitter.Artwork.Tapes;
using Splitter.Cutting.Tapes;
using Splitter.Geometry;

namespace Splitter.Tests.Cutting.Tapes;

/// <summary>Stretches of rows that end at a seam become one thread.</summary>
public sealed class SeamWaysTests
{
    /// <summary>Rows of a stretch each, 0.4 mm from the next.</summary>
    private static IEnumerable<KeptThread> Rows(int count, int holes) =>
        Enumerable
            .Range(0, count)
            .Select(row => new KeptThread([
                .. Enumerable
                    .Range(0, holes)
                    .Select(k => new KeptStitch(
                        new(1000 * (row % 2 == 0 ? k : holes - 1 - k), row * 400),
                        StitchKind.Fill,
                        StitchSource.Original
                    )),
            ])
            {
                Number = row,
                IsWhole = (row == 0, row == count - 1),
            });

    [Fact]
    public void RowsBesideEachOtherAreOneThread()
    {
        var thread = Assert.Single(new SeamWays(Region.Empty).Joined(Rows(10, 5)));
        Assert.Equal(50, thread.Stitches.Length);
        Assert.Equal(9, thread.Stitches.Count(s => s.Source == StitchSource.Made));
        Assert.Equal((0, (true, true)), (thread.Number, thread.IsWhole));
    }

    /// <summary>
    /// Three thousand rows, a large part: what is allocated grows with the stitches, of some 30 bytes, and not with each
    /// row for all of those before it.
    /// </summary>
    [Fact]
    public void TheEffortGrowsWithTheRows()
    {
        ImmutableArray<KeptThread> rows = [.. Rows(3000, 50)];
        var ways = new SeamWays(Region.Empty);
        var before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Equal(150_000, Assert.Single(ways.Joined(rows)).Stitches.Length);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 100_000_000);
    }
}
