using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Stitching;

namespace Splitter.Parts;

/// <summary>
/// Which ground of a part later stitches will hide, in square cells: those that rows and columns cross, with cells all
/// around them that are hidden too. The stitches that cover, those of fills and columns, are numbered through the whole
/// part: so the numbers stay what they are when travel below them goes another way.
/// </summary>
internal sealed class HiddenGround
{
    /// <summary>
    /// Side of a cell, µm: more than the 0.4 mm between rows, so that closed rows cross every cell and open ones do
    /// not; and as far as thread must lie inside the edge of what hides it, not to show beside it.
    /// </summary>
    internal const int Cell = 500;

    /// <summary>Stitches are followed in steps of this, µm: no cell that closed rows cross is passed over.</summary>
    private const double Stride = 200;

    private const int None = -1;

    private readonly int left;
    private readonly int top;

    /// <summary>For each cell the number of the last stitch that covers it.</summary>
    private readonly int[] last;

    /// <summary>For each cell the least number of the last stitches that cover it and each that touches it.</summary>
    private readonly int[] hidden;

    private readonly int[] firsts;

    /// <param name="blocks">All of a part, in sewing order.</param>
    internal HiddenGround(IReadOnlyCollection<Block> blocks)
    {
        var box = Box.Around(blocks.Select(b => b.Bounds));
        if (box.IsEmpty)
            box = new(0, 0, 0, 0);
        // One cell of margin all round, so that every cell that is asked for has neighbours.
        (left, top) = (ColumnOf(box.Left) - 1, ColumnOf(box.Top) - 1);
        (Columns, Rows) = (ColumnOf(box.Right) - left + 2, ColumnOf(box.Bottom) - top + 2);
        last = new int[Columns * Rows];
        Array.Fill(last, None);
        firsts = new int[blocks.Count + 1];
        foreach (var (i, block) in blocks.Index())
            firsts[i + 1] = Cover(block.Stitches, firsts[i]);
        hidden = LeastAround();
    }

    /// <summary>Whether a stitch hides what lies below it.</summary>
    internal static bool Covers(Stitch stitch) => stitch.Use is StitchUse.Fill or StitchUse.Satin;

    internal int Columns { get; }

    internal int Rows { get; }

    /// <summary>How many cells there are.</summary>
    internal int Cells => hidden.Length;

    /// <summary>The cell that a point lies in.</summary>
    internal int At(Point point) => ((ColumnOf(point.Y) - top) * Columns) + ColumnOf(point.X) - left;

    internal Point MiddleOf(int cell) =>
        new(((left + (cell % Columns)) * Cell) + (Cell / 2), ((top + (cell / Columns)) * Cell) + (Cell / 2));

    /// <summary>
    /// The number of the first stitch of a block that covers, or of the next block that has any, by its place in the
    /// order; of the last one's end too.
    /// </summary>
    internal int FirstOf(int block) => firsts[block];

    /// <summary>Whether stitches with this number or later ones cover the cell and all that touch it.</summary>
    internal bool IsHidden(int cell, int from) => hidden[cell] >= from;

    private int[] LeastAround()
    {
        var (across, least) = (new int[last.Length], new int[last.Length]);
        for (var i = 1; i < last.Length - 1; i++)
            across[i] = Math.Min(last[i], Math.Min(last[i - 1], last[i + 1]));
        // Cells of the margin, which nothing covers, are never hidden.
        Array.Fill(least, None);
        for (var i = Columns; i < last.Length - Columns; i++)
            least[i] = Math.Min(across[i], Math.Min(across[i - Columns], across[i + Columns]));
        return least;
    }

    /// <summary>Covers cells with the stitches of a block; the number after its last one.</summary>
    private int Cover(ImmutableArray<Stitch> stitches, int number)
    {
        for (var i = 1; i < stitches.Length; i++)
            if (Covers(stitches[i]))
            {
                var (from, to) = (stitches[i - 1].At, stitches[i].At);
                var count = Math.Max(1, (int)Math.Ceiling(from.DistanceTo(to) / Stride));
                for (var k = 0; k <= count; k++)
                    last[At(from.Towards(to, (double)k / count))] = number;
                number++;
            }
        return number;
    }

    /// <summary>Rounded down on both sides of the origin.</summary>
    private static int ColumnOf(int micrometres) => (micrometres < 0 ? micrometres - Cell + 1 : micrometres) / Cell;
}
