using Splitter.Planning.Fields.Covering;

namespace Splitter.Tests.Planning.Fields;

/// <summary>Which cells between lines at 0, 10, 30 and 40 mm, both ways, have something drawn in them.</summary>
public sealed class DrawnCellsTests
{
    [Theory]
    [InlineData("... .#. ...", new[] { 10.0, 10, 30, 10, 30, 30, 10, 30 })] // Up to the cell's edges, which do not count.
    [InlineData("... ##. ##.", new[] { 9.9, 10, 30, 10, 30, 30.1, 9.9, 30.1 })]
    [InlineData("### ### ###", new[] { 0.0, 0, 40, 0, 40, 40, 0, 40 })]
    [InlineData("#.. ... ...", new[] { 2.0, 2, 3, 2, 3, 3 })] // Smaller than a cell.
    [InlineData("... ### ...", new[] { -5, 20, 45, 20, 45, 20.01, -5, 20.01 })] // Across, and beyond.
    [InlineData(".#. .#. .#.", new[] { 20, -5, 20.01, -5, 20.01, 45, 20, 45 })]
    [InlineData("... ... ...", new[] { -9.0, -9, -1, -9, -1, -1 })] // Outside.
    [InlineData("#.. ##. ###", new[] { 0.0, 0, 40, 40, 0, 40 })] // On the slant, through cells' corners.
    [InlineData("##. .## ...", new[] { 5.0, 0, 5.01, 0, 38, 29.9, 38, 30 })] // Hardly wider than a line.
    public void ACellCountsWhenSomethingIsDrawnInside(string cells, double[] corners)
    {
        int[] lines = [0, 10_000, 30_000, 40_000];
        var drawn = new DrawnCells([Samples.Ground(corners)], lines, lines);
        Assert.Equal((3, 3), (drawn.Columns, drawn.Rows));
        Assert.Equal(
            cells,
            string.Join(
                ' ',
                Enumerable
                    .Range(0, 3)
                    .Select(row =>
                        string.Concat(Enumerable.Range(0, 3).Select(column => drawn.Touched(column, row) ? '#' : '.'))
                    )
            )
        );
    }

    /// <summary>Lines that part nothing make no cells.</summary>
    [Fact]
    public void OneLineAloneHasNoCells()
    {
        var drawn = new DrawnCells([Samples.Ground(0, 0, 40, 0, 40, 40, 0, 40)], [20_000], [0, 10_000, 30_000]);
        Assert.Equal((0, 2), (drawn.Columns, drawn.Rows));
    }

    /// <summary>Steps as near to the wanted one as go in evenly, and what is asked for between both ends.</summary>
    [Fact]
    public void LinesLieEvenlyAndWhereSomethingBegins()
    {
        Assert.Equal([500, 600, 650, 700, 800], GridLines.Even(500, 800, 100, [650, 500, 400, 900]));
        Assert.Equal([0, 125, 250], GridLines.Even(0, 250, 100, []));
        Assert.Equal([0, 50], GridLines.Even(0, 50, 100, []));
    }

    [Theory]
    [InlineData(-1, 0, 0)]
    [InlineData(0, 0, 0)]
    [InlineData(5, 0, 1)]
    [InlineData(10, 1, 1)]
    [InlineData(35, 2, 2)]
    public void ThePlaceAmongLines(int value, int before, int after)
    {
        int[] lines = [0, 10, 30];
        Assert.Equal(before, GridLines.AtOrBefore(lines, value));
        Assert.Equal(after, GridLines.AtOrAfter(lines, value));
    }
}
