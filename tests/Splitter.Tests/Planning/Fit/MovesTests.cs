using Splitter.Planning.Fit;

namespace Splitter.Tests.Planning.Fit;

/// <summary>Two errors that each hooping brings, and by how much they move two of them.</summary>
public sealed class MovesTests
{
    private static readonly Moves First = new([1, 2], [3, 4], 2);

    /// <summary>Set by the first, so that it has the first one's errors, too.</summary>
    private static readonly Moves Second = new([1, 2, 5, 6], [3, 5, 7, 8], 2);

    [Fact]
    public void WhatBothHaveInCommonParts()
    {
        Equal([0, 0, 5, 6], [0, 1, 7, 8], Second.From(First));
        Equal([0, 0, -5, -6], [0, -1, -7, -8], First.From(Second));
    }

    [Fact]
    public void ErrorsOfAHoopingAreLeftOut()
    {
        Equal([1, 2, 0, 6], [3, 5, 0, 8], Second.Without(1, 1));
        Equal([0, 0, 5, 6], [0, 0, 7, 8], Second.Without(0, 2));
    }

    /// <summary>Sums of products over the errors that both have: 1 + 4, 3 + 10, 3 + 8, 9 + 20.</summary>
    [Fact]
    public void CommonErrorsSpreadTogether()
    {
        Assert.Equal((5, 13, 11, 29), First.With(Second));
        Assert.Equal((5, 11, 13, 29), Second.With(First));
    }

    /// <summary>1 + 9 and 25 + 49 of the first kind, 4 + 25 and 36 + 64 of the second; there is no third.</summary>
    [Fact]
    public void KindsOfErrorsAddUpOverAllHoopings()
    {
        Assert.Equal(84, Second.Square(0));
        Assert.Equal(129, Second.Square(1));
        Assert.Equal(0, Second.Square(2));
    }

    private static void Equal(double[] x, double[] y, Moves moves)
    {
        Assert.Equal(x, moves.X);
        Assert.Equal(y, moves.Y);
    }
}
