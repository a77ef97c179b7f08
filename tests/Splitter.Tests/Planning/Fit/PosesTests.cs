using CsCheck;
using Splitter.Geometry;
using Splitter.Planning.Fit;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Fit;

/// <summary>How errors of setting and of the cloth move a hooping, and those that are set by it. Micrometres.</summary>
public sealed class PosesTests
{
    /// <summary>Cloth that gives by a thousandth along the warp, by 2 along the weft, by 3 on the bias.</summary>
    private static readonly Stretch Gives = new()
    {
        Warp = 0.001,
        Weft = 0.002,
        Bias = 0.003,
        WarpDirection = 30,
    };

    /// <summary>
    /// The quick way, which knows what a misfit is made of, against the slow one: error by error, how far it moves the place in
    /// the one hooping and in the other.
    /// </summary>
    [Fact]
    public void AMisfitIsTheDifferenceOfAllMoves() =>
        Gen.Select(Corners, Place, Gen.Bool)
            .Holds(
                (corners, at, gives) =>
                {
                    var poses = Four(corners, gives ? Gives : new());
                    for (var one = 0; one < 4; one++)
                    for (var other = 0; other < 4; other++)
                    {
                        var (xx, _, _, yy) = Spread(poses, one, other, at);
                        Assert.Equal(xx + yy, poses.Variance(one, other, at), 1e-6 * (1 + xx + yy));
                    }
                }
            );

    /// <summary>
    /// Of very many hoopings most have nothing to do with each other: here two chains side by side, and the last one set by both.
    /// </summary>
    [Fact]
    public void NothingIsPassedOverThatMovesOneOfThem()
    {
        const int count = 150;
        var poses = new Poses(count, 300, new(), default);
        poses.AddFirst();
        for (var i = 1; i < count; i++)
            poses.Add([
                new(At(i, 0), Math.Max(0, i - 2)),
                new(At(i, 90_000), i == count - 1 ? i - 1 : Math.Max(0, i - 2)),
            ]);
        for (var one = 1; one < count; one += 7)
        for (var other = 0; other < count; other += 11)
        {
            var (xx, _, _, yy) = Spread(poses, one, other, At(one, 40_000));
            Assert.Equal(xx + yy, poses.Variance(one, other, At(one, 40_000)), 1e-6 * (1 + xx + yy));
        }

        static Point At(int hooping, int y) => new(hooping * 50_000, y + (hooping % 2 * 100_000));
    }

    /// <summary>A drawing that is moved as a whole is sewn as well as before.</summary>
    [Fact]
    public void WhereTheDrawingLiesMakesNoDifference() =>
        Gen.Select(Corners, Place, Place)
            .Holds(
                (corners, at, by) =>
                    Assert.Equal(
                        Four(corners, Gives).Variance(1, 3, at),
                        Four([.. corners.Select(c => c + by)], Gives).Variance(1, 3, at + by),
                        1
                    )
            );

    /// <summary>
    /// Set by two corners 100 mm apart at an accuracy of 300: in their middle 300 / √2 along each axis; the turn, of 300 / (50 √2),
    /// moves a place 50 mm further right down by as much again.
    /// </summary>
    [Theory]
    [InlineData(50_000, 0, 45_000, 45_000)]
    [InlineData(100_000, 0, 45_000, 90_000)]
    [InlineData(50_000, 50_000, 90_000, 45_000)]
    [InlineData(150_000, 0, 45_000, 225_000)]
    public void AccuracyShiftsAndTurns(int x, int y, double along, double across)
    {
        var poses = Set(new(), (0, 0), (100_000, 0));
        var (xx, _, _, yy) = Spread(poses, 1, 0, new(x, y));
        Assert.Equal(along, xx, 1);
        Assert.Equal(across, yy, 1);
    }

    /// <summary>
    /// Cloth of which the warp runs along x: what lies 20 mm along it and 10 mm across from the nearer corner.
    /// </summary>
    [Theory]
    [InlineData(0, 20, 0)] // A thousandth of 20 mm.
    [InlineData(1, 0, 20)] // Two of 10 mm.
    [InlineData(2, 30, 60)] // Three of the other way, each.
    public void ClothGivesFromTheNearestCorner(int strain, double x, double y)
    {
        var poses = Set(Gives with { WarpDirection = 0 }, (0, 0), (100_000, 0));
        var moves = poses.MovesAt(1, new(20_000, 10_000));
        var column = moves.Stride + Poses.OfSetting + strain;
        Assert.Equal((x, y), (Math.Round(moves.X[column], 6), Math.Round(moves.Y[column], 6)));

        var mirrored = poses.MovesAt(1, new(80_000, -10_000));
        Assert.Equal((-x, -y), (Math.Round(mirrored.X[column], 6), Math.Round(mirrored.Y[column], 6)));
    }

    /// <summary>Half way between two corners the lesser one counts, whichever was named first.</summary>
    [Fact]
    public void OfTwoCornersAsNearTheFirstInPlaceCounts()
    {
        var stretch = Gives with { WarpDirection = 0 };
        var there = Set(stretch, (0, 0), (100_000, 0)).MovesAt(1, new(50_000, 0));
        var back = Set(stretch, (100_000, 0), (0, 0)).MovesAt(1, new(50_000, 0));
        var column = there.Stride + Poses.OfSetting;
        Assert.Equal(50, there.X[column], 6);
        Assert.Equal(50, back.X[column], 6);
    }

    /// <summary>Measured where its corners are, as closely as those were set, it lies no better than that.</summary>
    [Fact]
    public void ACorrectionTakesThePlaceOfTheSetting()
    {
        var poses = Set(new(), (0, 0), (100_000, 0));
        var before = poses.Variance(0, 1, new(70_000, 30_000));
        poses.Correct([new(new(0, 0), 0), new(new(100_000, 0), 0)], 100);
        Assert.Equal(before / 9, poses.Variance(0, 1, new(70_000, 30_000)), 1e-3);
    }

    /// <summary>Hoopings that are taken away leave nothing behind.</summary>
    [Fact]
    public void OneThatIsSetAnewForgetsHowItWas()
    {
        Point at = new(30_000, 70_000);
        var poses = Set(Gives, (0, 0), (100_000, 0));
        poses.Keep(1);
        poses.Add([new(new(0, 90_000), 0), new(new(40_000, 0), 0)]);
        Assert.Equal(Set(Gives, (0, 90_000), (40_000, 0)).Variance(0, 1, at), poses.Variance(0, 1, at), 1e-6);
        Assert.Equal(2, poses.Count);
    }

    private static Gen<Point> Place =>
        Gen.Select(Gen.Int[-200_000, 200_000], Gen.Int[-200_000, 200_000], (x, y) => new Point(x, y));

    private static Gen<Point[]> Corners =>
        Place.Array[7].Where(corners => corners.Distinct().Count() == corners.Length);

    /// <summary>One set by the first, one by that, and one by both.</summary>
    private static Poses Four(Point[] corners, Stretch stretch)
    {
        var poses = new Poses(4, 300, stretch, corners[0]);
        poses.AddFirst();
        poses.Add([new(corners[0], 0), new(corners[1], 0)]);
        poses.Add([new(corners[2], 1), new(corners[3], 1)]);
        poses.Add([new(corners[4], 0), new(corners[5], 1), new(corners[6], 2)]);
        return poses;
    }

    private static Poses Set(Stretch stretch, params (int X, int Y)[] corners)
    {
        var poses = new Poses(2, 300, stretch, new(7_000, 9_000));
        poses.AddFirst();
        poses.Add([.. corners.Select(c => new TakenCorner(new(c.X, c.Y), 0))]);
        return poses;
    }

    private static (double XX, double XY, double YX, double YY) Spread(Poses poses, int one, int other, Point at)
    {
        var moves = poses.MovesAt(one, at).From(poses.MovesAt(other, at));
        return moves.With(moves);
    }
}
