using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>
/// The prices of a grid: what a seam between two neighbouring cells costs. A cell has links to its eight neighbours, so
/// that a seam costs the same level, upright and at 45 degrees, and at most 8 % more in between (the least octagon around
/// a circle; Boykov and Kolmogorov 2003, ICCV, give the general rule).
/// </summary>
internal static class LinkPrices
{
    /// <summary>Prices are whole thousandths of a millimetre of plain fill.</summary>
    private const double Scale = 1000;

    /// <summary>Share of a cell's side that a link over it stands for: sqrt 2 - 1.</summary>
    private static readonly double Side = Math.Sqrt(2) - 1;

    /// <summary>Share of a cell's side that a link over its corner stands for: with two of them a whole side.</summary>
    private static readonly double Corner = (2 - Math.Sqrt(2)) / 2;

    /// <summary>
    /// What a millimetre of seam costs even where it shows nothing: seams that wander are awkward to sew. Less would let
    /// them run around every pebble, more would keep them from going round a motif.
    /// </summary>
    private const double Length = 0.06;

    /// <summary>
    /// What a millimetre of seam costs more within a cell of a stroke: once drawn it may touch the stroke. Much less than
    /// running along inside, which costs a crossing for every width of the stroke.
    /// </summary>
    private const double BesideStroke = 1.5;

    internal static Energy Of(Surface surface, SeamGrid grid)
    {
        var scan = new SurfaceScan(surface, grid);
        var through = surface
            .Drawing.Shapes.Select((_, i) => scan.IsNarrow(surface, i) ? 1 : SeamPrice.Through(surface, i))
            .ToArray();
        var links = ImmutableArray.CreateBuilder<CellLink>();
        for (var row = 0; row < grid.Rows; row++)
        for (var column = 0; column < grid.Columns; column++)
        {
            Link(column, row, 1, 0);
            Link(column, row, 0, 1);
            Link(column, row, 1, 1);
            Link(column, row, -1, 1);
        }
        return new(grid.Allowed, links.ToImmutable());

        void Link(int column, int row, int right, int down)
        {
            if (column + right < 0 || column + right >= grid.Columns || row + down >= grid.Rows)
                return;
            var (a, b) = (grid.At(column, row), grid.At(column + right, row + down));
            var (fieldsA, fieldsB) = (grid.Allowed[a], grid.Allowed[b]);
            if (fieldsA.IsEmpty || fieldsB.IsEmpty || (fieldsA.Length == 1 && fieldsB.Length == 1))
                return;
            var (x, y) = ((2 * column) + 1, (2 * row) + 1);
            var density =
                Length
                + Density(
                    scan.TopAt(x, y),
                    scan.TopAt(x + right, y + down),
                    scan.TopAt(x + (2 * right), y + (2 * down))
                );
            var (width, height) = grid.Size(a);
            var length = right != 0 && down != 0 ? Corner * (width + height) / 2 : Side * (down == 0 ? height : width);
            var isOverCorner = right != 0 && down != 0;
            var (strokeA, strokeB) = (scan.StrokeIn(a), scan.StrokeIn(b));
            if (strokeA != strokeB)
                density += BesideStroke;
            var price = density * Units.ToMillimetres(length);
            // Cells along a stroke share sides: a seam across it parts two of them once.
            if (!isOverCorner && strokeA == strokeB && strokeA != SurfaceScan.Bare)
                price += SeamPrice.LineCrossing;
            links.Add(new(a, b, (int)Math.Max(1, Math.Round(price * Scale, MidpointRounding.AwayFromZero))));
        }

        double Density(int from, int middle, int to)
        {
            if (from == to)
                return middle == from || middle == SurfaceScan.Bare
                    ? Through(from)
                    : Math.Max(Through(from), Through(middle));
            return from == SurfaceScan.Bare || to == SurfaceScan.Bare ? SeamPrice.AlongOutline : SeamPrice.AlongEdge;
        }

        double Through(int shape) => shape == SurfaceScan.Bare ? 0 : through[shape];
    }
}
