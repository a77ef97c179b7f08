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
        Assert.Equal([700, 1400, 700, 0, 5000, 4300, 3600, 4300], block.Stitches.Select(s => s.At.X));
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

    /// <summary>
    /// On the first and the last stitches' own lines, give or take the tape's grid, 0.07 mm; in holes of their own where
    /// there is more than one stitch.
    /// </summary>
    [Fact]
    public void TiesLieOnThePathItselfAndAreSpread() =>
        Paths.Holds(path =>
        {
            if (Ties.Fasten("line", path) is not { } block)
                return;
            var all = block.Stitches;
            var sewn = StitchRules.Sewable(path).Select(s => s.At).ToList();
            Assert.All(all[..4].Concat(all[^3..]), s => Assert.Equal(StitchUse.Tie, s.Use));
            AssertAlong(sewn, [.. all[..4].Select(s => s.At)]);
            AssertAlong([.. Enumerable.Reverse(sewn)], [.. all[^3..].Reverse().Select(s => s.At), sewn[^1]]);
            Assert.All(all, s => Assert.True(s.At.X % 100 == 0 && s.At.Y % 100 == 0));
            foreach (var (from, to) in all.Zip(all.Skip(1)))
                Assert.InRange(from.At.DistanceTo(to.At), 300, 12_100);
        });

    private static void AssertAlong(List<Point> path, Point[] ties)
    {
        var next = path[Math.Min(2, path.Count - 1)];
        Assert.All(ties, t => Assert.InRange(Math.Min(Off(t, path[0], path[1]), Off(t, path[1], next)), 0, 71));
        Assert.Equal(path[0], ties[3]);
        Assert.Equal(ties[0], ties[2]);
        foreach (var (from, to) in ties.Zip(ties.Skip(1)))
            Assert.InRange(from.DistanceTo(to), 300, 1100);
        if (path.Count > 2 || path[0].DistanceTo(path[1]) > 1700)
            Assert.NotEqual(ties[1], ties[3]);
    }

    [Fact]
    public void NothingIsSewnWhereThereIsNoStitch() =>
        Assert.Null(Ties.Fasten("dot", [new(new(0, 0), StitchUse.Run), new(new(200, 100), StitchUse.Run)]));

    private static double Off(Point p, Point a, Point b) => a == b ? p.DistanceTo(a) : Polygons.Distance(p, p, a, b);
}
