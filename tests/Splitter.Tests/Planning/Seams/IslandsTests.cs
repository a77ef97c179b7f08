using Splitter.Planning.Seams;

namespace Splitter.Tests.Planning.Seams;

/// <summary>
/// Three fields over the same 12 x 12 mm, in cells of 1 x 1 mm; the last has only the left half of it. A piece of less than
/// 25 mm² goes to a neighbour that has all its ground.
/// </summary>
public sealed class IslandsTests
{
    private const int Side = 12;

    private static readonly SeamGrid Grid = new(
        [new(0, 0, 12_000, 12_000), new(0, 0, 12_000, 12_000), new(0, 0, 6_000, 12_000)],
        1000
    );

    [Fact]
    public void ASmallPieceGoesToItsNeighbour()
    {
        Assert.Equal((Side, Side), (Grid.Columns, Grid.Rows));
        Assert.All(Removed((c, r) => c is >= 4 and < 8 && r is >= 4 and < 10 ? 1 : 0), label => Assert.Equal(0, label));
    }

    /// <summary>4 x 7 mm amid the other; a comb whose teeth hang together below; and what turns left from its first cell on.</summary>
    [Theory]
    [InlineData("block")]
    [InlineData("comb")]
    [InlineData("boot")]
    public void ALargeOneStays(string shape)
    {
        int Label(int column, int row) =>
            shape switch
            {
                "block" => column is >= 4 and < 8 && row is >= 3 and < 10,
                "comb" => row is >= 1 and <= 6 && column % 2 == 1 && column < 8 || (row == 7 && column is >= 1 and < 8),
                _ => column == 10 && row is >= 1 and <= 3 || (row is >= 4 and <= 6 && column is >= 2 and <= 10),
            }
                ? 1
                : 0;
        Assert.Equal(All(Label), Removed(Label));
    }

    /// <summary>Most of the boundary is the third field's, that lacks a column of it; it goes to the one that has all.</summary>
    [Theory]
    [InlineData(4, 2)]
    [InlineData(6, 1)]
    public void OnlyAFieldThatHasAllOfItTakesIt(int last, int taker)
    {
        // The upper four rows are the second field's, where it has most of the piece's upper side only.
        int Label(int column, int row) =>
            row is >= 4 and < 8 && column >= 3 && column <= last ? 0
            : row < 4 || column > 5 ? 1
            : 2;
        Assert.Equal(taker, Removed(Label)[(5 * Side) + 4]);
    }

    private static int[] Removed(Func<int, int, int> label)
    {
        var labels = All(label);
        Islands.Remove(Grid, labels);
        return labels;
    }

    private static int[] All(Func<int, int, int> label) =>
        [.. Enumerable.Range(0, Side * Side).Select(cell => label(cell % Side, cell / Side))];
}
