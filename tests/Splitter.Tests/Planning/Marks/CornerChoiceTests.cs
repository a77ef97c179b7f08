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

    private static ChosenCorners Best(
        Stretch stretch,
        CornerCandidate[] places,
        bool isAsked,
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
        var found = choice.Best([.. places], (_, _) => [], 3, isAsked);
        Assert.NotNull(found);
        return found;
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
