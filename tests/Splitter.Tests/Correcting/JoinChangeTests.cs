using Splitter.Correcting;
using Splitter.Planning;

namespace Splitter.Tests.Correcting;

/// <summary>Which joins a correction leaves open: what may be missed, in µm, of an overlap that covers 500.</summary>
public sealed class JoinChangeTests
{
    [Theory]
    [InlineData(400, 600, true)] // Covered as planned, and no longer.
    [InlineData(600, 700, true)] // Never covered, and worse now.
    [InlineData(700, 600, false)] // Better than planned.
    [InlineData(600, 600, false)]
    [InlineData(300, 400, false)] // Worse, and still covered.
    [InlineData(300, 500, false)]
    public void AJoinIsUncoveredByWhatMakesItWorse(int planned, int now, bool uncovers) =>
        Assert.Equal(uncovers, new JoinChange(Join(planned), Join(now)).Uncovers);

    [Fact]
    public void AJoinIsOfTheTwoPartsThatMeetThere()
    {
        var change = new JoinChange(Join(400), Join(400));
        Assert.Equal([false, true, false, true], Enumerable.Range(0, 4).Select(change.Joins));
    }

    private static PartJoin Join(int misfit) =>
        new()
        {
            Earlier = 1,
            Later = 3,
            WorstAt = default,
            PredictedError = 200,
            Budget = new(200, 0, 0, 0, 0),
            AlongSeam = misfit,
            Overlap = 800,
            Narrowest = 800,
            Covers = 500,
        };
}
