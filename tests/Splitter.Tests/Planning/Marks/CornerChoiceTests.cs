using Splitter.Geometry;
using Splitter.Planning.Fit;
using Splitter.Planning.Marks;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Marks;

/// <summary>Which of a few places corners are laid on. Places and seams in millimetres, arms of 8 mm.</summary>
public sealed class CornerChoiceTests
{
    private const int Arm = 8 * Units.Millimetre;

    private static readonly CornerCandidate[] Row = [At(0, 0), At(60, 0), At(30, 0)];

    /// <summary>
    /// The cloth gives by 5 % on the slant and the seam lies 100 mm away: what that does no corner of the row changes, and
    /// setting three instead of two corners cannot be seen beside it.
    /// </summary>
    [Fact]
    public void AThirdCornerThatGivesHardlyAnythingIsSewnOnlyWhereItIsAskedFor()
    {
        var soft = new Stretch { Bias = 0.05 };
        var few = Best(soft, Row, isAsked: false, (30, 100));
        Assert.Equal(2, few.Corners.Length);
        Assert.Null(few.Setting.LastGives);
        Assert.InRange(few.Setting.OneMoreGives!.Value, -1, CornerChoice.Worth);

        var asked = Best(soft, [.. Row, At(30, 9)], isAsked: true, (0, 100), (60, 100));
        Assert.Equal(3, asked.Corners.Length);
    }

    /// <summary>
    /// Cloth that does not give, a seam between the corners: there two of them miss by accuracy²·(2/2) and three by
    /// accuracy²·(2/3) in the mean square (Fitzpatrick, West and Maurer 1998), and 1 - sqrt(2/3) is 18 %.
    /// </summary>
    [Fact]
    public void WhatTheLastCornerGivesIsThePublishedFigure()
    {
        var found = Best(new(), Row, isAsked: false, (30, 0));
        Assert.Equal(3, found.Corners.Length);
        Assert.Equal(1 - Math.Sqrt(2.0 / 3), found.Setting.LastGives!.Value, 6);
        Assert.Equal((60_000, 0, true), (found.Setting.Apart, found.Setting.OffLine, found.Setting.IsOnStrip));
    }

    /// <summary>
    /// At one end of the row a corner beside the first would set the seam best, by accuracy·0.95 against 0.98 for one that
    /// stands 12 mm off the line of the two: by the same formula.
    /// </summary>
    [Fact]
    public void AThirdCornerStandsOffTheLineOfTheOthersWhereThereIsGroundForIt()
    {
        var found = Best(new(), [At(0, 0), At(120, 0), At(16, 0), At(24, 12)], isAsked: true, (0, 0));
        Assert.InRange(found.Setting.OffLine, Arm, int.MaxValue);
        Assert.False(found.Setting.IsOnStrip);
        Assert.Equal(120_000, found.Setting.Apart);
    }

    /// <summary>Two places that set the seam equally well: the one with less of its arms on stitching, or that is sewn anyway.</summary>
    [Theory]
    [InlineData(0, true, 0, false)]
    [InlineData(1, false, 2, false)]
    [InlineData(1, true, 1, false)]
    public void OfPlacesThatSetItEquallyWellTheCheaperIsTaken(int poor, bool there, int otherPoor, bool otherThere)
    {
        var cheap = At(0, 1) with { Poor = poor, IsThere = there };
        var dear = At(0, -1) with { Poor = otherPoor, IsThere = otherThere };
        foreach (
            var places in (CornerCandidate[][])
                [
                    [dear, cheap, At(60, 0)],
                    [cheap, At(60, 0), dear],
                ]
        )
            Assert.Equal(
                [cheap, At(60, 0)],
                Best(new(), places, 2, true, Nowhere, (30, 0))!.Corners.OrderBy(c => c.At.X)
            );
    }

    /// <summary>Corners that could be taken for each other are not set together, 16 mm here.</summary>
    [Theory]
    [InlineData(15, 2)]
    [InlineData(16, 3)]
    public void CornersKeepApart(int third, int count) =>
        Assert.Equal(
            count,
            Best(new(), [At(0, 0), At(60, 0), At(third, 0)], 3, true, Nowhere, (30, 0))!.Corners.Length
        );

    /// <summary>Two at least lie 40 mm apart, or the hooping could turn.</summary>
    [Fact]
    public void WithoutTwoAtAUsefulDistanceThereIsNoChoice()
    {
        Assert.Null(Best(new(), [At(0, 0), At(39, 0), At(20, 5)], 3, true, Nowhere, (30, 0)));
        Assert.Null(Best(new(), [], 3, true, Nowhere, (30, 0)));
        Assert.Equal(2, Best(new(), [At(0, 0), At(40, 0)], 3, true, Nowhere, (30, 0))!.Corners.Length);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void AsManyAreTakenAsAreAskedFor(int most) =>
        Assert.Equal(
            most,
            Best(
                new(),
                [At(0, 0), At(60, 0), At(60, 40), At(0, 40), At(30, 20)],
                most,
                true,
                Nowhere,
                (30, 20)
            )!.Corners.Length
        );

    /// <summary>
    /// The seam lies beyond the second corner: it is moved out to where the seam has both on either side, unless another
    /// part is set by it as it is.
    /// </summary>
    [Theory]
    [InlineData(false, 120)]
    [InlineData(true, 60)]
    public void ACornerIsMovedWhereItSetsTheSeamBetter(bool there, int x)
    {
        CornerCandidate[] places = [At(0, 0), At(60, 0) with { IsThere = there }];
        var found = Best(
            new(),
            places,
            2,
            true,
            (corner, steps) => corner.At.X == 60_000 && steps == 4 ? [At(120, 0)] : [],
            (60, 0)
        );
        Assert.Equal(x * 1000, found!.Corners.Max(c => c.At.X));
    }

    /// <summary>The worst place of all seams decides, wherever it lies.</summary>
    [Fact]
    public void CornersLieAroundAllSeams()
    {
        CornerCandidate[] places = [At(0, 0), At(60, 0), At(0, 200), At(60, 200), At(30, 100)];
        var chosen = Best(new(), places, 2, true, Nowhere, (30, 0), (30, 200))!.Corners.Select(c => c.At).ToList();
        Assert.InRange(chosen[0].DistanceTo(chosen[1]), 200_000, 210_000);
    }

    /// <summary>The worst seam, far to the right, is met alike by either of two; the nearer one to the other seam is taken.</summary>
    [Theory]
    [InlineData(12, 20)]
    [InlineData(-12, -20)]
    public void OfCornersThatSetTheWorstSeamAlikeThoseAreTakenThatSetTheOthersBetter(int seam, int y)
    {
        CornerCandidate[] places = [At(0, 0), At(60, 20), At(60, -20)];
        var chosen = Best(new(), places, 2, true, Nowhere, (130, 0), (30, seam))!.Corners;
        Assert.Equal([At(0, 0), At(60, y)], chosen.OrderBy(c => c.At.X));
    }

    /// <summary>The four outermost on the slant lie less than 40 mm from each other; two others do not.</summary>
    [Fact]
    public void WhereTheOutermostLieTooNearToEachOtherOthersAreTaken()
    {
        var upright = new[] { (0, 21), (0, -21) };
        var slanting = new[] { (14, 14), (14, -14), (-14, 14), (-14, -14) };
        var found = Best(
            new(),
            [.. slanting.Concat(upright).Select(p => At(p.Item1, p.Item2))],
            2,
            true,
            Nowhere,
            (0, 0)
        );
        Assert.Equal([-21_000, 21_000], found!.Corners.Select(c => c.At.Y).Order());
    }

    /// <summary>Half a metre further right and down nothing is different.</summary>
    [Fact]
    public void WhereTheWorkLiesChangesNoChoice()
    {
        (int X, int Y)[] places = [(0, 0), (120, 0), (16, 0), (24, 12)];
        var (here, there) = (Best(0), Best(500));
        Assert.Equal(
            (here.Setting.Apart, here.Setting.OffLine, here.Setting.IsOnStrip),
            (there.Setting.Apart, there.Setting.OffLine, there.Setting.IsOnStrip)
        );
        Assert.Equal(here.Corners.Select(c => c.At), there.Corners.Select(c => c.At - Point.FromMillimetres(500, 500)));

        ChosenCorners Best(int by) =>
            CornerChoiceTests.Best(new(), [.. places.Select(p => At(p.X + by, p.Y + by))], isAsked: true, (by, by));
    }

    private static IEnumerable<CornerCandidate> Nowhere(CornerCandidate corner, int steps) => [];

    private static ChosenCorners Best(
        Stretch stretch,
        CornerCandidate[] places,
        bool isAsked,
        params (int X, int Y)[] seams
    )
    {
        var found = Best(stretch, places, 3, isAsked, Nowhere, seams);
        Assert.NotNull(found);
        return found;
    }

    private static ChosenCorners? Best(
        Stretch stretch,
        CornerCandidate[] places,
        int most,
        bool isAsked,
        Func<CornerCandidate, int, IEnumerable<CornerCandidate>> around,
        params (int X, int Y)[] seams
    )
    {
        var poses = new Poses(2, 300, stretch, default);
        poses.AddFirst();
        var choice = new CornerChoice(
            poses,
            [.. seams.Select(s => new CornerChoice.SeamPlace(Point.FromMillimetres(s.X, s.Y), 0))],
            Arm,
            2 * Arm
        );
        return choice.Best([.. places], around, most, isAsked);
    }

    private static CornerCandidate At(int x, int y) =>
        new(
            Point.FromMillimetres(x, y),
            Point.FromMillimetres(x + 8, y),
            Point.FromMillimetres(x, y + 8),
            Donor: 0,
            Poor: 0,
            IsThere: false
        );
}
