using CsCheck;
using Splitter.Planning.Fields.Covering;

namespace Splitter.Tests.Planning.Fields;

/// <summary>What a search for small covers offers is a cover, whatever the table: of all rows that there are by then.</summary>
public sealed class CoverSearchTests
{
    private const int Sets = 9;

    /// <summary>Which sets cover each row, a bit each.</summary>
    private static readonly Gen<int[]> Rows = Gen.Int[1, (1 << Sets) - 1].Array[4, 14];

    /// <summary>One cover in three is answered with a row that it leaves open, one is passed by, and one is accepted.</summary>
    [Fact]
    public void WhatIsOfferedCoversAllRowsAndHasNothingToSpare()
    {
        Rows.Holds(
            rows =>
            {
                var (table, offered) = (Table(rows), 0);
                new CoverSearch(table, [2]).Run(
                    Enumerable.Range(0, Sets / 2),
                    1,
                    1_000_000,
                    cover =>
                    {
                        Assert.Contains(2, cover);
                        Assert.True(Covers(table, cover));
                        Assert.All(cover.Where(set => set != 2), set => Assert.False(Covers(table, cover.Remove(set))));
                        if (++offered % 3 == 1 && cover.Length < Sets)
                            table.Add([.. Enumerable.Range(0, Sets).Except(cover)]);
                        return offered % 3 == 0;
                    }
                );
                Assert.NotEqual(0, offered);
            },
            cases: 20
        );
    }

    /// <summary>A cover that was accepted is followed by smaller ones, and the search ends where one is small enough.</summary>
    [Fact]
    public void CoversBecomeSmallerUntilTheyAreSmallEnough() =>
        Rows.Holds(
            rows =>
            {
                var (table, sizes) = (Table(rows), new List<int>());
                new CoverSearch(table, []).Run(
                    Enumerable.Range(0, Sets),
                    3,
                    2_000_000,
                    cover =>
                    {
                        sizes.Add(cover.Length);
                        return true;
                    }
                );
                Assert.Equal(sizes.Distinct().OrderDescending(), sizes);
                Assert.All(sizes.SkipLast(1), size => Assert.InRange(size, 4, Sets));
            },
            cases: 20
        );

    private static CoverTable Table(int[] rows)
    {
        var table = new CoverTable(Sets);
        foreach (var bits in rows)
            table.Add([.. Enumerable.Range(0, Sets).Where(set => (bits >> set & 1) == 1)]);
        return table;
    }

    private static bool Covers(CoverTable table, IReadOnlyCollection<int> cover) =>
        Enumerable.Range(0, table.Rows).All(row => table.SetsOf(row).Any(cover.Contains));
}
