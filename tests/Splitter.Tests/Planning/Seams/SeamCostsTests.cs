using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning.Seams;

namespace Splitter.Tests.Planning.Seams;

/// <summary>
/// Two fields over the same 60 x 60 mm of a fill, in cells of 1 mm: what a boundary through its middle costs goes by its
/// length, whichever way it runs. By eight neighbours (Boykov and Kolmogorov 2003, Computing geodesics and minimal surfaces
/// via graph cuts, from memory) it is nowhere taken for shorter than it is, and at worst, 26.6 degrees off the grid, for 9.3 % longer.
/// </summary>
public sealed class SeamCostsTests
{
    private const int Side = 60;

    private static readonly ImmutableArray<Box> Grounds = [.. Enumerable.Repeat(new Box(0, 0, 60_000, 60_000), 2)];

    /// <summary>The boundary runs square to the way that is given.</summary>
    [Theory]
    [InlineData(0, 1)]
    [InlineData(1, 1)]
    [InlineData(1, -1)]
    [InlineData(2, 1)]
    [InlineData(1, 2)]
    [InlineData(-1, 2)]
    public void ABoundaryCostsWhatItsLengthIs(int acrossX, int acrossY)
    {
        var (x, y) = (Math.Abs(acrossX), Math.Abs(acrossY));
        // From edge to opposite edge.
        var length = Side * Math.Sqrt((x * x) + (y * y)) / Math.Max(x, y);
        Assert.InRange(Cost(acrossX, acrossY) / Cost(1, 0) / (length / Side), 0.99, 1.1);
    }

    private static double Cost(int acrossX, int acrossY)
    {
        var grid = new SeamGrid(Grounds, 1000);
        var drawing = Samples.Drawing(Samples.Rectangle("fill", -5, -5, Side + 10, Side + 10));
        var problem = SeamCosts.State(
            grid,
            drawing,
            new Wholeness(drawing, Grounds),
            new SeamRoom(Grounds, null, _ => true),
            new LayerMap(grid, drawing, _ => false)
        );
        // Twice the place, so that the middle of the ground is a whole number.
        var choice = Enumerable
            .Range(0, problem.NodeCount)
            .Select(node => (Column: node % Side, Row: node / Side))
            .Select(cell =>
                (acrossX * ((2 * cell.Column) + 1 - Side)) + (acrossY * ((2 * cell.Row) + 1 - Side)) < 0 ? 0 : 1
            )
            .ToArray();
        return problem.Cost(choice);
    }
}
