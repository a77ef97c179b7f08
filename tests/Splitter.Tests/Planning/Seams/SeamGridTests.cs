using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning.Seams;

namespace Splitter.Tests.Planning.Seams;

/// <summary>
/// Two fields of 3 x 3 mm that share the middle one of five columns, in cells of 1 mm: numbers 0 to 4 in the first row, 5 to 9
/// in the second, 10 to 14 in the third. Micrometres.
/// </summary>
public sealed class SeamGridTests
{
    private static readonly ImmutableArray<Box> Grounds = [new(0, 0, 3000, 3000), new(2000, 0, 5000, 3000)];
    private static readonly SeamGrid Grid = new(Grounds, 1000);

    [Fact]
    public void CellsLieBetweenLines()
    {
        Assert.Equal([0, 1000, 2000, 3000, 4000, 5000], Grid.X);
        Assert.Equal([0, 1000, 2000, 3000], Grid.Y);
        Assert.Equal([500, 1500, 2500, 3500, 4500], Grid.MiddleX);
        Assert.Equal([500, 1500, 2500], Grid.MiddleY);
        Assert.Equal((5, 3, 15), (Grid.Columns, Grid.Rows, Grid.CellCount));
    }

    /// <summary>No cell is wider than asked for, and every edge of a ground is a line.</summary>
    [Fact]
    public void BetweenEdgesLinesAreEven()
    {
        var grid = new SeamGrid([new(0, 0, 2500, 700), new(400, 0, 3000, 900)], 1000);
        Assert.Equal([0, 400, 1100, 1800, 2500, 3000], grid.X);
        Assert.Equal([0, 700, 900], grid.Y);
        Assert.Equal((700, 200), (grid.Width(6), grid.Height(6)));
        Assert.Equal((400, 700), (grid.Width(0), grid.Height(0)));
    }

    [Fact]
    public void EachCellKnowsTheFieldsThatHoldIt() =>
        Assert.Equal(
            ["0", "0", "0 1", "1", "1"],
            Enumerable.Range(5, 5).Select(cell => string.Join(' ', Grid.Fields[cell]))
        );

    [Theory]
    [InlineData(0, 0, 0)]
    [InlineData(4, 2, 14)]
    [InlineData(1, 2, 11)]
    [InlineData(-1, 0, -1)]
    [InlineData(0, -1, -1)]
    [InlineData(5, 0, -1)]
    [InlineData(0, 3, -1)]
    public void CellsAreCountedRowByRow(int column, int row, int cell) => Assert.Equal(cell, Grid.CellAt(column, row));

    [Theory]
    [InlineData(-700, 0, 0)]
    [InlineData(0, 0, 0)]
    [InlineData(999, 0, 0)]
    [InlineData(1000, 1, 1)]
    [InlineData(2999, 2, 2)]
    [InlineData(3001, 3, 2)]
    [InlineData(9000, 4, 2)]
    public void ALineBelongsToTheCellBehindIt(int at, int column, int row) =>
        Assert.Equal((column, row), (Grid.ColumnOf(at), Grid.RowOf(at)));

    /// <summary>From cell to cell, in the line's direction; what lies outside is no cell.</summary>
    [Theory]
    [InlineData(500, 500, 2500, 1500, "0-1 1-6 6-7")]
    [InlineData(2500, 1500, 500, 500, "7-6 6-1 1-0")]
    [InlineData(500, 2700, 900, 300, "10-5 5-0")]
    [InlineData(-500, 500, 1500, 500, "0-1")]
    [InlineData(4500, 2500, 4500, 9000, "")]
    [InlineData(200, 200, 800, 900, "")]
    public void ALineGoesFromCellToCell(int x, int y, int toX, int toY, string steps)
    {
        var passed = new List<string>();
        Grid.Walk(new([new(x, y), new(toX, toY)]), (from, to) => passed.Add($"{from}-{to}"));
        Assert.Equal(steps, string.Join(' ', passed));
    }

    [Fact]
    public void ABentLineIsWalkedPieceByPiece()
    {
        var passed = new List<string>();
        Grid.Walk(new([new(500, 500), new(1500, 500), new(1500, 1500)]), (from, to) => passed.Add($"{from}-{to}"));
        Assert.Equal("0-1 1-6", string.Join(' ', passed));
    }
}
