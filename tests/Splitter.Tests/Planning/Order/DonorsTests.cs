using Splitter.Geometry;
using Splitter.Planning.Order;

namespace Splitter.Tests.Planning.Order;

public sealed class DonorsTests
{
    /// <summary>Two rows far closer to their own than to each other: the way from one to the other is not lost.</summary>
    [Theory]
    [InlineData(9, 5)]
    [InlineData(20, 2)]
    public void EveryFieldOfCloseRowsLeadsBackToTheFirst(int columns, int apart)
    {
        var rules = Samples.Recipe(Samples.Hoop(130, 180)).Registration;
        var fields = (
            from row in Enumerable.Range(0, 2)
            from column in Enumerable.Range(0, columns)
            let left = column * apart * Units.Millimetre
            let top = row * 160 * Units.Millimetre
            select new Box(left, top, left + (130 * Units.Millimetre), top + (180 * Units.Millimetre))
        ).ToArray();
        var donors = Donors.Of(fields.Length, 0, (a, b) => fields[a].Common(fields[b]), rules);
        var reached = new List<int> { 0 };
        for (var next = 0; next < reached.Count; next++)
            reached.AddRange(
                Enumerable
                    .Range(0, fields.Length)
                    .Where(f => !reached.Contains(f) && donors[f].Contains(reached[next]))
                    .ToList()
            );
        Assert.Equal(fields.Length, reached.Count);
        Assert.All(donors, few => Assert.InRange(few.Length, 1, 7));
    }

    [Fact]
    public void WhatSharesTooLittleIsNoDonor()
    {
        var rules = Samples.Recipe(Samples.Hoop(100, 100)).Registration;
        Box[] fields = [new(0, 0, 100_000, 100_000), new(95_000, 0, 195_000, 100_000)];
        Assert.All(Donors.Of(2, 0, (a, b) => fields[a].Common(fields[b]), rules), few => Assert.Empty(few));
    }
}
