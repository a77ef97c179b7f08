using Splitter.Geometry;
using Splitter.Parts;
using Splitter.Planning;
using Splitter.Stitching;

namespace Splitter.Tests.Parts;

/// <summary>Where the needle goes down for marks. Millimetres.</summary>
public sealed class MarkStitcherTests
{
    /// <summary>At both ends, half-way along each arm of 8 mm, and exactly where they meet.</summary>
    [Fact]
    public void ACornerHasAHoleWhereItsArmsMeet() =>
        Assert.Equal(
            [(18, 20), (14, 20), (10, 20), (10, 24), (10, 28)],
            Holes(MarkStitcher.Corner(new("A1", At(10, 20), At(18, 20), At(10, 28), 0, [1])), "A1")
        );

    /// <summary>An arm of 4 mm is one stitch, one of 8.1 mm three.</summary>
    [Fact]
    public void StitchesOfACornerAreUpToFourMillimetresLong() =>
        Assert.Equal(
            [(14, 20), (10, 20), (10, 22.7), (10, 25.4), (10, 28.1)],
            Holes(MarkStitcher.Corner(new("A1", At(10, 20), At(14, 20), At(10, 28.1), 0, [1])), "A1")
        );

    /// <summary>Both strokes in one go, through the middle; a shorter one where there is less room.</summary>
    [Theory]
    [InlineData(3)]
    [InlineData(1)]
    public void ACrossGoesThroughItsMiddle(int stroke) =>
        Assert.Equal(
            [(10 - stroke, 20), (10, 20), (10 + stroke, 20), (10, 20), (10, 20 - stroke), (10, 20), (10, 20 + stroke)],
            Holes(
                MarkStitcher.Cross(new AlignmentStitch(At(10, 20), 0, "hill") { Stroke = stroke * 1000 }),
                "check-hill"
            )
        );

    [Theory]
    [InlineData(Fold.Upright, "fold-upright")]
    [InlineData(Fold.Level, "fold-level")]
    internal void AFoldIsALineOfStitchesUpToThreeMillimetresLong(Fold fold, string name) =>
        Assert.Equal(
            [(5, 0), (5, 2.5), (5, 5), (5, 7.5), (5, 10)],
            Holes(MarkStitcher.Line(new(fold, At(5, 0), At(5, 10))), name)
        );

    private static List<(double X, double Y)> Holes(Block block, string name)
    {
        Assert.Equal(name, block.Of);
        Assert.All(block.Stitches, s => Assert.Equal(StitchUse.Mark, s.Use));
        return [.. block.Stitches.Select(s => (s.At.X / 1000.0, s.At.Y / 1000.0))];
    }

    private static Point At(double x, double y) => Point.FromMillimetres(x, y);
}
