using Splitter.Correcting;
using Splitter.Diagnostics;

namespace Splitter.Tests.Correcting;

/// <summary>What was measured, as it is said in a call.</summary>
public sealed class OffsetWordsTests
{
    /// <summary>Units in the same word or the next, ways in any order, a comma behind; the number of a cross is no length.</summary>
    [Theory]
    [InlineData("1 0.6 mm right 0.2 mm down 2 0.1 mm left", "1:600,-200 2:-100,0")]
    [InlineData("1 0.6mm right 0.2mm up, 2 0.1mm left", "1:600,200 2:-100,0")]
    [InlineData("A1 0.1 cm up 0.02 in right 12 3 mm down", "A1:508,1000 12:0,-3000")]
    [InlineData("A1 0 mm right 0 mm up", "A1:0,0")]
    [InlineData("1 , 0.6 mm , right", "1:600,0")] // A comma by itself is no word.
    [InlineData("", "")]
    public void APlaceAndItsWays(string said, string offsets)
    {
        var read = OffsetWords.Read([said], Place.Whole("call"));
        Assert.Empty(read.Diagnostics);
        Assert.Equal(
            offsets,
            string.Join(' ', read.Value.Select(o => FormattableString.Invariant($"{o.At}:{o.Right},{o.Up}")))
        );
    }

    [Theory]
    [InlineData("1 0.6 mm right", true)]
    [InlineData("1 0.6 mm up", true)]
    [InlineData("1 0.6 mm right 0 mm up", false)]
    public void OneWayIsNotTheSameAsNought(string said, bool isOneWay) =>
        Assert.Equal(isOneWay, OffsetWords.Read([said], Place.Whole("call")).Value[0].IsOneWay);

    [Theory]
    [InlineData("1 0.6 right", "0.6")] // No unit.
    [InlineData("1 0.6 ell right", "'ell' is no unit")]
    [InlineData("1 0.6ell right", "'ell' is no unit")]
    [InlineData("1 0.6 mm", "does not say which way")]
    [InlineData("1 0.6 mm 2", "'2' is no way")]
    [InlineData("1 -0.6 mm right", "has a sign")]
    [InlineData("1 0,6 mm right", "write '0.6'")]
    [InlineData("1 0.6 mm right 0.2 mm left", "'right' and then 'left'")]
    [InlineData("1 1001 mm right", "more than can be meant")]
    [InlineData("1 2 0.6 mm right", "'2' is no length")]
    [InlineData("1 much", "'much' is no length")]
    [InlineData("1", "nothing follows")]
    public void WhatIsNotUnderstoodIsToldWithItsPlace(string said, string told)
    {
        var problem = Assert.Single(OffsetWords.Read([said], Place.Whole("call")).Diagnostics);
        Assert.Contains(told, problem.Message, StringComparison.Ordinal);
        Assert.Contains("1", problem.Message, StringComparison.Ordinal);
    }
}
