using CsCheck;
using Splitter.Geometry;
using Splitter.Stitching;

namespace Splitter.Tests.Stitching;

public sealed class TiesTests
{
    private static readonly Gen<Stitch[]> Paths = Gen.Select(
        Gen.Int[0, 30_000],
        Gen.Int[0, 30_000],
        (x, y) => new Stitch(new(x, y), StitchUse.Run)
    ).Array[2, 12];

    [Fact]
    public void ThreeSmallStitchesLieAtEachEnd()
    {
        var block = Ties.Fasten("line", [new(new(0, 0), StitchUse.Run), new(new(5000, 0), StitchUse.Run)])!;
        Assert.Equal([700, 0, 700, 0, 5000, 4300, 5000, 4300], block.Stitches.Select(s => s.At.X));
        Assert.Equal(
            [
                StitchUse.Tie,
                StitchUse.Tie,
                StitchUse.Tie,
                StitchUse.Tie,
                StitchUse.Run,
                StitchUse.Tie,
                StitchUse.Tie,
                StitchUse.Tie,
            ],
            block.Stitches.Select(s => s.Use)
        );
    }

    /// <summary>On the first and the last stitch's own line, give or take the tape's grid: 0.07 mm.</summary>
    [Fact]
    public void TiesLieOnThePathItself() =>
        Paths.Holds(path =>
        {
            if (Ties.Fasten("line", path) is not { } block)
                return;
            var all = block.Stitches;
            var (start, end) = (path[0].At.OnTape(), path[^1].At.OnTape());
            Assert.All(all[..4], s => Assert.InRange(Off(s.At, start, all[4].At), 0, 71));
            Assert.All(all[^3..], s => Assert.InRange(Off(s.At, end, all[^5].At), 0, 71));
            Assert.All(all, s => Assert.True(s.At.X % 100 == 0 && s.At.Y % 100 == 0));
            foreach (var (from, to) in all.Zip(all.Skip(1)))
                Assert.InRange(from.At.DistanceTo(to.At), 300, 12_100);
        });

    [Fact]
    public void NothingIsSewnWhereThereIsNoStitch() =>
        Assert.Null(Ties.Fasten("dot", [new(new(0, 0), StitchUse.Run), new(new(200, 100), StitchUse.Run)]));

    private static double Off(Point p, Point a, Point b)
    {
        var (along, off) = (Vector.Between(a, b), Vector.Between(a, p));
        return Math.Abs(Vector.Cross(along.Unit, off));
    }
}
