namespace Splitter.Tests;

/// <summary>Work on several things at once finds what it finds one after the other.</summary>
public sealed class InOrderTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    public void ThingsThatTouchAreWorkedOnOneAfterTheOther(int jobs)
    {
        // Each thing writes on some places of one list, and returns what it has found on them.
        const int Places = 60;
        var dice = new Random(7);
        var things = Enumerable
            .Range(0, 400)
            .Select(i => (Number: i + 1, From: dice.Next(Places - 4), Length: dice.Next(1, 5)))
            .ToArray();
        var expected = Worked(things.Select);
        var found = Worked(work => InOrder.Select(things, jobs, Touch, work));
        Assert.Equal(expected, found);

        bool Touch(int a, int b) =>
            things[a].From < things[b].From + things[b].Length && things[b].From < things[a].From + things[a].Length;

        static List<int> Worked(Func<Func<(int Number, int From, int Length), int>, IEnumerable<int>> each)
        {
            var written = new int[Places];
            return
            [
                .. each(thing =>
                {
                    var own = written.AsSpan(thing.From, thing.Length);
                    var sum = 0;
                    foreach (var number in own)
                        sum += number;
                    own.Fill(thing.Number);
                    return sum;
                }),
                .. written,
            ];
        }
    }

    [Fact]
    public void ThingsThatDoNotTouchShareARound()
    {
        // Each waits for the other to begin: with rounds of one each they would wait for ever.
        using var both = new Barrier(2);
        InOrder.Select([0, 1, 2, 3], 2, (one, earlier) => one - earlier == 2, thing => both.SignalAndWait(60_000));
        Assert.Equal(2, both.CurrentPhaseNumber);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void OfTwoThingsEachIsFoundInItsPlace(int jobs) =>
        Assert.Equal((7, "seven"), InOrder.Both(jobs, () => 7, () => "seven"));

    [Fact]
    public void TwoThingsAreWorkedOnAtOnce()
    {
        // Each waits for the other to begin.
        using var both = new Barrier(2);
        Assert.Equal((true, true), InOrder.Both(2, () => both.SignalAndWait(60_000), () => both.SignalAndWait(60_000)));
    }
}
