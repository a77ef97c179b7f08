using Splitter.Planning.Fields.Covering;

namespace Splitter.Tests.Planning.Fields;

/// <summary>
/// Rows in a ring, of which each set covers two neighbours: the relaxed problem takes half of each set, so that n rows need
/// n / 2 sets, rounded up.
/// </summary>
public sealed class DualBoundTests
{
    private const int Rounds = 200;

    [Theory]
    [InlineData(3, 2)]
    [InlineData(6, 3)]
    [InlineData(7, 4)]
    [InlineData(12, 6)]
    public void HalfOfARingIsNeeded(int rows, int bound)
    {
        var dual = new DualBound(Ring(rows));
        Assert.Equal(bound, dual.Climb(All(rows), All(rows), rows, Rounds, null));
        // No set pays for itself more than once, and what rows pay is the bound.
        Assert.InRange(dual.Prices.Sum(), (bound - 1) * DualBound.Unit, bound * DualBound.Unit);
        Assert.All(dual.Costs, cost => Assert.InRange(cost, -DualBound.Unit, DualBound.Unit));
    }

    /// <summary>Rows that are covered already pay nothing.</summary>
    [Fact]
    public void OnlyOpenRowsCount()
    {
        bool[] open = [true, true, false, true, true, false, false, true];
        var dual = new DualBound(Ring(8));
        // Rows 7, 0, 1 take two sets, 3 and 4 one.
        Assert.Equal(3, dual.Climb(open, All(8), 8, Rounds, null));
        Assert.All([2, 5, 6], row => Assert.Equal(0, dual.Prices[row]));
    }

    /// <summary>Without every other set each row is left with one: all the rest is needed.</summary>
    [Fact]
    public void OnlyAllowedSetsCount()
    {
        bool[] allowed = [true, false, true, false, true, false];
        Assert.Equal(3, new DualBound(Ring(6)).Climb(All(6), allowed, 6, Rounds, null));
    }

    /// <summary>One round finds nothing that was not in the prices: half a unit a row is all that a ring can pay.</summary>
    [Fact]
    public void GoodPricesNeedNoRounds()
    {
        var prices = Enumerable.Repeat(DualBound.Unit / 2, 9).ToArray();
        Assert.Equal(5, new DualBound(Ring(9)).Climb(All(9), All(9), 9, 0, prices));
        Assert.Equal(1, new DualBound(Ring(9)).Climb(All(9), All(9), 9, 0, [DualBound.Unit, .. new long[8]]));
    }

    /// <summary>
    /// Twice four rows, of which the first three have a set together, and the first and last one. An even share asks the
    /// first to pay as much as the next two, three halves in all; nothing of it is left to the other set when it pays none.
    /// </summary>
    [Fact]
    public void PricesClimbFromAnEvenShare()
    {
        var table = new CoverTable(4);
        foreach (var first in new[] { 0, 2 })
        {
            table.Add([first, first + 1]);
            table.Add([first]);
            table.Add([first]);
            table.Add([first + 1]);
        }
        Assert.Equal(3, new DualBound(table).Climb(All(8), All(4), 8, 0, null));
        Assert.Equal(4, new DualBound(table).Climb(All(8), All(4), 8, Rounds, null));
    }

    private static bool[] All(int count) => [.. Enumerable.Repeat(true, count)];

    private static CoverTable Ring(int rows)
    {
        var table = new CoverTable(rows);
        for (var row = 0; row < rows; row++)
            table.Add(row == 0 ? [0, rows - 1] : [row - 1, row]);
        return table;
    }
}
