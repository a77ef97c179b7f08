using Splitter.Planning.Fit;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Fit;

/// <summary>
/// A hooping that is set by corners at 10, 20 and 110, 20 mm without error, on cloth that gives, with its warp 30 degrees
/// clockwise of x: how far a place 50 mm below the first corner moves.
/// </summary>
public sealed class ClothMovesTests
{
    /// <summary>
    /// From the corner that place lies 50 sin 30° = 25 mm along the warp and 50 cos 30° = 43.3 mm along the weft. A hundredth
    /// of 25 mm along the warp, (cos 30°, sin 30°); two of 43.3 along the weft, (-sin 30°, cos 30°); a shear of three swaps
    /// both: three of 43.3 along the warp and of 25 along the weft.
    /// </summary>
    [Theory]
    [InlineData(0.01, 0, 0, 216.5, 125)]
    [InlineData(0, 0.02, 0, -433, 750)]
    [InlineData(0, 0, 0.03, 750, 1299)]
    public void ClothGivesAlongItsThreads(double warp, double weft, double bias, double x, double y)
    {
        var stretch = new Stretch
        {
            Warp = warp,
            Weft = weft,
            Bias = bias,
            WarpDirection = 30,
        };
        var poses = new Poses(2, 1e-6, stretch, new(3000, 4000));
        poses.AddFirst();
        poses.Add([new(new(10_000, 20_000), 0), new(new(110_000, 20_000), 0)]);
        var moves = poses.MovesAt(1, new(10_000, 70_000));
        Assert.Equal(x, moves.X.Sum(), 0.1);
        Assert.Equal(y, moves.Y.Sum(), 0.1);
        Assert.Equal((x * x) + (y * y), poses.Variance(0, 1, new(10_000, 70_000)), 100.0);
        // At the corners it is set, whatever the cloth does elsewhere.
        Assert.Equal(0, poses.Variance(0, 1, new(110_000, 20_000)), 1e-6);
    }
}
