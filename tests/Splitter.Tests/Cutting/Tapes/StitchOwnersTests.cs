using System.Collections.Immutable;
using Splitter.Artwork.Tapes;
using Splitter.Cutting.Tapes;
using Splitter.Geometry;
using Splitter.Planning;
using static Splitter.Tests.Cutting.HandPlan;

namespace Splitter.Tests.Cutting.Tapes;

/// <summary>
/// Which of two parts that meet at x = 50 mm sews a stitch. Unless said otherwise the first one's field ends at 60, the
/// second one's begins at 40. Places in millimetres, on one level.
/// </summary>
public sealed class StitchOwnersTests
{
    [Fact]
    public void AStitchGoesWhereItsMiddleLies() =>
        Assert.Equal([0, 0, 0, 1, 1], Of(StitchKind.Run, 30, 40, 48, 56, 70));

    [Fact]
    public void AHoleAloneGoesWhereItLies()
    {
        Assert.Equal([0], Of(StitchKind.Run, 45));
        Assert.Equal([1], Of(StitchKind.Run, 55));
    }

    /// <summary>Territories end 1 mm before x = 50: there the nearer one counts, and of two as near the earlier.</summary>
    [Theory]
    [InlineData(48.8, 50.8, 0)]
    [InlineData(49, 51, 0)]
    [InlineData(49.2, 51.2, 1)]
    public void BetweenTerritoriesAStitchGoesToTheNearer(double from, double to, int owner)
    {
        var plan = Plan();
        Region[] territories =
        [
            Samples.Ground(0, 0, 49, 0, 49, 40, 0, 40),
            Samples.Ground(51, 0, 99, 0, 99, 40, 51, 40),
        ];
        var owners = new StitchOwners(plan, [.. territories], Nothing);
        Assert.Equal([owner, owner], owners.Of(Stitches(StitchKind.Run, from, to)));
    }

    /// <summary>Some of it must lie on that part's territory, and all of it in its field.</summary>
    [Theory]
    [InlineData(45, 58, 0)] // Its middle lies beyond the seam, its start does not.
    [InlineData(58, 45, 0)]
    [InlineData(52, 58, 1)] // Wholly beyond.
    [InlineData(45, 61, 1)] // Outside the first field.
    public void WhatLiesBelowOthersGoesToTheEarliestPart(double from, double to, int owner)
    {
        Assert.All([StitchKind.Underlay, StitchKind.Travel], kind => Assert.Equal([owner, owner], Of(kind, from, to)));
    }

    /// <summary>About a millimetre beyond the seam, at the start, the end, and in the middle of a line.</summary>
    [Theory]
    [InlineData(new[] { 51, 50.2, 49, 40 })]
    [InlineData(new[] { 40, 49.2, 49.9, 51.1 })]
    [InlineData(new[] { 40, 49.8, 50.7, 49, 40 })]
    public void AScrapGoesToTheNeighbour(double[] places) =>
        Assert.Equal(places.Select(_ => 0), Of(StitchKind.Run, places));

    [Fact]
    public void AStretchThatIsWorthItsTiesStays() =>
        Assert.Equal([0, 0, 0, 1, 1, 0], Of(StitchKind.Run, 40, 44, 50, 50.9, 51.8, 46));

    /// <summary>Ends 1.2 mm beyond the seam, where the first field ends, too.</summary>
    [Fact]
    public void AScrapStaysWhereTheNeighbourCannotSewIt() =>
        Assert.Equal([0, 0, 1], Of(StitchKind.Run, Plan(right: 50.5), 40, 50, 51.2));

    /// <summary>
    /// The last three stitches of a zigzag, 3 mm wide and 0.4 mm apart, lie over the seam: of a column that is 1.2 mm, of
    /// a line to and fro 9 mm.
    /// </summary>
    [Theory]
    [InlineData(StitchKind.Satin, 0)]
    [InlineData(StitchKind.Run, 1)]
    internal void AColumnCountsAlongItselfAndALineAsItIsSewn(StitchKind kind, int owner)
    {
        var zigzag = Enumerable
            .Range(0, 30)
            .Select(i => new OriginalStitch(At(50.1 + (0.4 * (i - 26)), i % 2 * 3), kind, 0));
        var owners = Owners(Plan(), Nothing).Of([.. zigzag]);
        Assert.All(owners[..27], o => Assert.Equal(0, o));
        Assert.All(owners[27..], o => Assert.Equal(owner, o));
    }

    /// <summary>No stitch is longer than some field can sew once it is divided; holes lie where it was.</summary>
    [Theory]
    [InlineData(51, 49, 45, 55)]
    [InlineData(51, 49, 55, 45)]
    [InlineData(51, 49, 41, 61)]
    [InlineData(50.5, 49.5, 44, 54)]
    public void AStitchThatNoFieldHoldsIsSewnAsSeveral(double right, double left, double from, double to)
    {
        var owners = Owners(Plan(right, left), Nothing);
        var divided = owners.Divided(Stitches(StitchKind.Run, from, to));
        Assert.Equal([At(from), At(to)], [divided[0].Stitch.At, divided[^1].Stitch.At]);
        Assert.Equal(divided.Select((_, i) => i > 0 && i < divided.Length - 1), divided.Select(d => d.IsNew));
        Assert.True(divided.Length > 2);
        foreach (var (one, other) in divided.Zip(divided.Skip(1)))
        {
            Assert.Contains(Enumerable.Range(0, 2), h => owners.CanSew(h, one.Stitch.At, other.Stitch.At));
            Assert.Equal(Math.Sign(to - from), Math.Sign(other.Stitch.At.X - one.Stitch.At.X));
        }
    }

    [Fact]
    public void AStitchThatAFieldHoldsStaysOne() =>
        Assert.Equal(
            [false, false, false],
            Owners(Plan(), Nothing).Divided(Stitches(StitchKind.Run, 41, 50, 59)).Select(d => d.IsNew)
        );

    /// <summary>The first part has sewn a line at x = 52 mm, over what is divided now.</summary>
    [Theory]
    [InlineData(49.5, 53.5, 0)] // Begins on the first part's territory.
    [InlineData(51, 56, 1)] // Does not: it cannot but lie over the line.
    [InlineData(53, 57, 1)] // Lies beside it.
    public void WhatWouldLieOnFinishedWorkGoesToAnEarlierPart(double from, double to, int owner)
    {
        var line = new FinishedWork(Plan().Hoopings[1].Ground);
        line.AddEarlier(At(52, -2), At(52, 2));
        var owners = Owners(Plan(), [Nothing[0], line]);
        Assert.Equal([owner, owner], owners.Of(Stitches(StitchKind.Fill, from, to)));
    }

    /// <summary>A scrap on the other side goes to no part that would sew it over what is finished.</summary>
    [Fact]
    public void AScrapDoesNotGoOnFinishedWork()
    {
        var line = new FinishedWork(Plan().Hoopings[1].Ground);
        line.AddEarlier(At(49.4, -2), At(49.4, 2));
        double[] places = [60, 50, 49, 48.8];
        Assert.Equal([1, 1, 1, 1], Owners(Plan(), Nothing).Of(Stitches(StitchKind.Run, places)));
        Assert.Equal([1, 1, 0, 0], Owners(Plan(), [Nothing[0], line]).Of(Stitches(StitchKind.Run, places)));
    }

    private static ImmutableArray<FinishedWork> Nothing => [.. Plan().Hoopings.Select(h => new FinishedWork(h.Ground))];

    private static Plan Plan(double right = 60, double left = 40) => HandPlan.Of([null], right, left);

    private static StitchOwners Owners(Plan plan, ImmutableArray<FinishedWork> finished) =>
        new(plan, [.. plan.Hoopings.Select(h => h.Territory)], finished);

    private static int[] Of(StitchKind kind, params double[] places) => Of(kind, Plan(), places);

    private static int[] Of(StitchKind kind, Plan plan, params double[] places) =>
        Owners(plan, Nothing).Of(Stitches(kind, places));

    private static ImmutableArray<OriginalStitch> Stitches(StitchKind kind, params double[] places) =>
        [.. places.Select(x => new OriginalStitch(At(x), kind, 0))];

    /// <summary>Twenty millimetres down, or so far from there.</summary>
    private static Point At(double x, double down = 0) => new(Mm(x), Mm(20 + down));
}
