using CsCheck;
using Splitter.Geometry;

namespace Splitter.Tests.Geometry;

public sealed class InscribedDiscTests
{
    /// <summary>The outline left by the engine when it is shrunk says the same, only slower.</summary>
    [Fact]
    public void ADiscFitsWhereSomethingIsLeftWhenTheGroundShrinks() =>
        Gen.Select(PolygonsTests.Star, Gen.Int[100, 40_000])
            .Holds(
                (ground, diameter) =>
                    Assert.Equal(
                        !Polygons.Offset(ground, -diameter / 2.0).IsEmpty,
                        InscribedDisc.Fits(ground, diameter)
                    )
            );

    /// <summary>A square of 10 mm holds a disc as wide as itself, and none that is wider.</summary>
    [Theory]
    [InlineData(9_800, true)]
    [InlineData(9_950, true)]
    [InlineData(10_050, false)]
    public void ADiscInASquare(int diameter, bool fits) =>
        Assert.Equal(fits, InscribedDisc.Fits(Samples.Ground(0, 0, 10, 0, 10, 10, 0, 10), diameter));

    /// <summary>The engine, asked to shrink these stairs by 5 mm, took 40 s: each step meets 80 others then.</summary>
    [Fact]
    public void FineStairsAreAsWideAsTheGroundBehindThem() =>
        Assert.True(InscribedDisc.Fits(Stairs(steps: 2_500, each: 120), 10_000));

    /// <summary>A triangle whose longest side is stairs.</summary>
    /// <param name="each">Width and height of a step, µm.</param>
    internal static Region Stairs(int steps, int each) =>
        Polygons.FromRings(
            [
                new Ring([
                    .. Enumerable
                        .Range(0, steps)
                        .SelectMany(i => new[] { new Point(i * each, i * each), new Point((i + 1) * each, i * each) }),
                    new(steps * each, steps * each),
                    new(0, steps * each),
                ]),
            ],
            FillRule.NonZero
        );
}
