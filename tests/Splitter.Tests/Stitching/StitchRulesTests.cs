using CsCheck;
using Splitter.Stitching;

namespace Splitter.Tests.Stitching;

/// <summary>Bounds in µm as they stand in the trade's numbers: 0.3 mm and 12.1 mm, places on the tape's 0.1 mm.</summary>
public sealed class StitchRulesTests
{
    private static readonly Gen<Stitch[]> Paths = Gen.Select(
        Gen.Int[-60, 60],
        Gen.Int[-60, 60],
        Gen.Int[1, 500],
        (x, y, scale) => new Stitch(new(x * scale, y * scale), StitchUse.Run)
    ).Array[1, 30];

    [Fact]
    public void EveryStitchIsSewable() =>
        Paths.Holds(path =>
        {
            var sewable = StitchRules.Sewable(path);
            Assert.All(sewable, s => Assert.True(s.At.X % 100 == 0 && s.At.Y % 100 == 0));
            foreach (var (from, to) in sewable.Zip(sewable.Skip(1)))
                Assert.InRange(from.At.DistanceTo(to.At), 300, 12_100);
        });

    [Fact]
    public void BothEndsStayWhereTheyAre() =>
        Paths.Holds(path =>
        {
            var sewable = StitchRules.Sewable(path);
            Assert.Equal(path[0].At.OnTape(), sewable[0].At);
            // A path that is all within one short stitch has its first place alone.
            if (sewable.Length > 1)
                Assert.Equal(path[^1].At.OnTape(), sewable[^1].At);
        });

    [Fact]
    public void WhatIsSewableAlreadyIsLeftAsItIs() =>
        Paths.Holds(path =>
        {
            var sewable = StitchRules.Sewable(path);
            Assert.Equal(sewable.AsEnumerable(), StitchRules.Sewable(sewable).AsEnumerable());
        });

    [Fact]
    public void ALongStitchIsDividedEvenly()
    {
        var sewable = StitchRules.Sewable([new(new(0, 0), StitchUse.Run), new(new(24_200, 0), StitchUse.Satin)]);
        Assert.Equal([0, 8100, 16_100, 24_200], sewable.Select(s => s.At.X));
        Assert.All(sewable.Skip(1), s => Assert.Equal(StitchUse.Satin, s.Use));
    }

    [Fact]
    public void TheLongestStitchOfTheTapeIsLeftWhole() =>
        Assert.Equal(
            2,
            StitchRules.Sewable([new(new(0, 0), StitchUse.Run), new(new(12_100, 0), StitchUse.Run)]).Length
        );
}
