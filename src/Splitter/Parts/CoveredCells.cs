using Splitter.Geometry;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter.Parts;

/// <summary>
/// What <see cref="HiddenGround"/> knows, as finely as the tape's grid, on some quarters alone: where ground is too
/// narrow for its cells, thread in the middle is still hidden.
/// </summary>
internal sealed class CoveredCells
{
    /// <summary>Side of a cell, µm.</summary>
    private const int Cell = Units.TapeStep;

    /// <summary>Along a quarter.</summary>
    private const int Side = Quarter.Side / Cell;

    /// <summary>
    /// How far beside its middle a row covers the cloth, µm: a little more than half of what is usual between rows, so
    /// that no cell between them is left bare.
    /// </summary>
    private const int Breadth = 250;

    /// <summary>
    /// How many cells around one are covered where it is hidden: the edge of thread along its middle then lies no
    /// further out than that of the rows.
    /// </summary>
    private const int Margin = 3;

    private const int None = -1;

    private readonly GroundMap quarters;
    private readonly Box ground;
    private readonly int[] firsts;

    /// <summary>For each cell of a quarter the number of the last stitch that covers it.</summary>
    private readonly int[]?[] last;

    /// <summary>
    /// For each cell the least of these numbers of it and those around it; worked out when asked for.
    /// </summary>
    private readonly int[]?[] hidden;

    /// <param name="quarters">Each a ground of its own.</param>
    /// <param name="count">How many there are.</param>
    /// <param name="ground">What the map knows; all stitches lie in it.</param>
    /// <param name="blocks">Of a part, in sewing order: their stitches are numbered through.</param>
    internal CoveredCells(GroundMap quarters, int count, Box ground, IReadOnlyCollection<Block> blocks)
    {
        (this.quarters, this.ground, last, hidden) = (quarters, ground, new int[count][], new int[count][]);
        firsts = new int[blocks.Count + 1];
        foreach (var (block, number) in blocks.Select((block, i) => (block, i)))
        {
            firsts[number + 1] = firsts[number] + block.Stitches.Length;
            for (var i = 1; i < block.Stitches.Length && count > 0; i++)
                if (HiddenGround.Covers(block.Stitches[i]))
                    Cover(block.Stitches[i - 1].At, block.Stitches[i].At, firsts[number] + i);
        }
    }

    /// <summary>
    /// The number of the first stitch of a block, by its place in the order; of the last one's end too.
    /// </summary>
    internal int FirstOf(int block) => firsts[block];

    /// <summary>Whether stitches with this number or later ones cover a place.</summary>
    internal bool IsCovered(Point at, int from) =>
        Quarter.At(at) is var quarter
        && ground.Contains(at)
        && quarters.GroundOf(quarter) is { } number
        && last[number] is { } cells
        && cells[CellAt(at, quarter)] >= from;

    /// <summary>The same of all places along a stitch.</summary>
    internal bool IsCovered(Point from, Point to, int first)
    {
        var steps = (int)Math.Ceiling(from.DistanceTo(to) / Cell);
        for (var k = 0; k <= steps; k++)
            if (!IsCovered(from.Towards(to, steps == 0 ? 0 : (double)k / steps), first))
                return false;
        return true;
    }

    /// <summary>Whether stitches with this number or later ones cover a place and all around it.</summary>
    internal bool IsHidden(Point at, int from)
    {
        var quarter = Quarter.At(at);
        if (!ground.Contains(at) || quarters.GroundOf(quarter) is not { } number)
            return false;
        var cells = hidden[number] ??= LeastAround(quarter);
        return cells[CellAt(at, quarter)] >= from;
    }

    private static int CellAt(Point at, Quarter quarter) =>
        ((at.Y - (quarter.Row * Quarter.Side)) / Cell * Side) + ((at.X - (quarter.Column * Quarter.Side)) / Cell);

    private void Cover(Point from, Point to, int number)
    {
        var box = Box.Around([from, to]).Grown(Breadth);
        if (!quarters.Meets(box))
            return;
        var (first, end) = (Quarter.At(new(box.Left, box.Top)), Quarter.At(new(box.Right, box.Bottom)));
        for (var row = first.Row; row <= end.Row; row++)
        for (var column = first.Column; column <= end.Column; column++)
            if (quarters.GroundOf(new(column, row)) is { } quarter)
                Cover(last[quarter] ??= Bare(), new(column, row), from, to, number);
    }

    private static void Cover(int[] cells, Quarter quarter, Point from, Point to, int number)
    {
        // Of the stitch from the quarter's first cell's middle, and square to the stitch.
        double x = from.X - (quarter.Column * Quarter.Side) - (Cell / 2),
            y = from.Y - (quarter.Row * Quarter.Side) - (Cell / 2);
        var way = Vector.Between(from, to);
        var length = Math.Max(1, way.Length);
        var (top, bottom) = Near(y, way.Y);
        var (left, right) = Near(x, way.X);
        for (var row = top; row <= bottom; row++)
        for (var column = left; column <= right; column++)
        {
            double dx = (column * Cell) - x,
                dy = (row * Cell) - y;
            var along = Math.Clamp(((dx * way.X) + (dy * way.Y)) / length, 0, length);
            (dx, dy) = (dx - (along * way.X / length), dy - (along * way.Y / length));
            if ((dx * dx) + (dy * dy) <= Breadth * Breadth)
                cells[(row * Side) + column] = number;
        }
    }

    /// <summary>The first and the last column, or row, that may lie on the breadth of a stitch.</summary>
    /// <param name="from">Where it begins, from the middle of the first one.</param>
    private static (int First, int Last) Near(double from, double way) =>
        (
            Math.Max(0, (int)((from + Math.Min(0, way) - Breadth) / Cell)),
            Math.Min(Side - 1, (int)((from + Math.Max(0, way) + Breadth) / Cell) + 1)
        );

    /// <summary>First along, then across.</summary>
    private int[] LeastAround(Quarter quarter)
    {
        const int Wide = Side + (2 * Margin);
        var beside = new int[]?[9];
        for (var i = 0; i < beside.Length; i++)
            beside[i] = LastOf(new(quarter.Column + (i % 3) - 1, quarter.Row + (i / 3) - 1));
        var (across, least) = (new int[Side * Wide], new int[Side * Side]);
        for (var row = 0; row < Wide; row++)
        for (var column = 0; column < Side; column++)
        {
            var lowest = int.MaxValue;
            for (var aside = -Margin; aside <= Margin; aside++)
                lowest = Math.Min(lowest, LastOn(quarter, beside, column + aside, row - Margin));
            across[(row * Side) + column] = lowest;
        }
        for (var i = 0; i < least.Length; i++)
        {
            least[i] = int.MaxValue;
            for (var down = 0; down <= 2 * Margin; down++)
                least[i] = Math.Min(least[i], across[i + (down * Side)]);
        }
        return least;
    }

    private int[]? LastOf(Quarter quarter) => quarters.GroundOf(quarter) is { } number ? last[number] : null;

    /// <param name="beside">What covers the quarter and the eight around it.</param>
    /// <param name="column">Of a cell, counted from the quarter, which it may lie beside.</param>
    /// <param name="row">The same.</param>
    private int LastOn(Quarter quarter, int[]?[] beside, int column, int row)
    {
        var at = new Point(
            (quarter.Column * Quarter.Side) + (column * Cell),
            (quarter.Row * Quarter.Side) + (row * Cell)
        );
        // Counted from the first of those nine.
        (column, row) = (column + Side, row + Side);
        return ground.Contains(at) && beside[(row / Side * 3) + (column / Side)] is { } cells
            ? cells[(row % Side * Side) + (column % Side)]
            : None;
    }

    private static int[] Bare()
    {
        var cells = new int[Side * Side];
        Array.Fill(cells, None);
        return cells;
    }
}
