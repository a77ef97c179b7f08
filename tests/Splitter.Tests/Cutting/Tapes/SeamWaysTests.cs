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
    /// A row to the right along y = 0, and the next one back from so far beside its end: the thread goes on beside the first
    /// row, where the part sews, or not at all.
    /// </summary>
    [Theory]
    [InlineData(StitchKind.Fill, 17, true, 1)] // 3 mm, which may lie open.
    [InlineData(StitchKind.Fill, 17, false, 1)]
    [InlineData(StitchKind.Fill, 15, true, 1)]
    [InlineData(StitchKind.Fill, 15, false, 2)]
    [InlineData(StitchKind.Fill, 12.1, true, 1)]
    [InlineData(StitchKind.Fill, 11, true, 2)] // 9 mm are too far between rows,
    [InlineData(StitchKind.Underlay, 11, true, 1)] // and not below them.
    [InlineData(StitchKind.Underlay, 11, false, 2)]
    [InlineData(StitchKind.Underlay, -9, true, 1)]
    [InlineData(StitchKind.Underlay, -11, true, 2)]
    [InlineData(StitchKind.Run, 20, true, 2)] // Lines are no rows.
    internal void AThreadGoesOnAsFarAsItIsHidden(StitchKind kind, double start, bool isSewn, int threads)
    {
        // Without a strip of 1 mm the part does not sew all of the way.
        var ground = Samples.Ground(-40, -5, 60, -5, 60, 5, -40, 5);
        if (!isSewn)
            ground = Polygons.Subtract(ground, Samples.Ground(17.5, -5, 18.5, -5, 18.5, 5, 17.5, 5));
        var joined = new SeamWays(ground).Joined([Thread(kind, 0, 20, 0), Thread(kind, start, start - 10, 0)]);
        Assert.Equal(threads, joined.Count);
        var holes = joined[0].Stitches;
        Assert.All(
            holes.Zip(holes.Skip(1)).Where(s => s.Second.Source == StitchSource.Made),
            s => Assert.InRange(s.First.At.DistanceTo(s.Second.At), 0, 3000)
        );
    }

    /// <summary>A line and a row that begins where it ends are two threads, either way round.</summary>
    [Fact]
    public void ALineIsNotSewnOnAsARow()
    {
        var ways = new SeamWays(Region.Empty);
        Assert.Equal(2, ways.Joined([Thread(StitchKind.Run, 0, 20, 0), Thread(StitchKind.Fill, 20, 0, 0.4)]).Count);
        Assert.Equal(2, ways.Joined([Thread(StitchKind.Fill, 0, 20, 0), Thread(StitchKind.Run, 20, 0, 0.4)]).Count);
    }

    private static KeptThread Thread(StitchKind kind, double from, double to, double y) =>
        new([
            .. new[] { from, to }.Select(x => new KeptStitch(Point.FromMillimetres(x, y), kind, StitchSource.Original)),
        ])
        {
            Number = 0,
            IsWhole = (true, true),
        };

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
