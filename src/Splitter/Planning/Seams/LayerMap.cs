using NetTopologySuite.Geometries;
using NetTopologySuite.Index.Strtree;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>
/// Which shapes lie on each cell of a grid, and on which part of it. Shapes that are cut away under others lie below
/// them by a trap only, narrower than a cell: what of it is counted by the middles of cells alone, seams would slip
/// between. Those of a tape are not cut away, and lie below others with all that they have there. Of two shapes that
/// seams cut one hooping sews both at any place: only where one lies that stays whole is looked at all of them.
/// </summary>
internal sealed class LayerMap
{
    /// <summary>Places along each side of a cell, 0.2 mm apart: a quarter of a usual trap. One bit each.</summary>
    internal const int Parts = 8;

    /// <summary>All places of a cell.</summary>
    internal const int Places = Parts * Parts;

    private const int None = -1;

    /// <summary>
    /// Shapes of a cell whose order is looked at, the topmost: pairs grow with the square of their number. What lies
    /// below so many is not seen, or is so small that it lies beside them in a cell. Fills are cut away under others,
    /// so that only very many crossing lines come that far; on a tape, so many shapes over each other.
    /// </summary>
    internal const int Deepest = 32;

    /// <summary>Entries of all cells; each knows the one below it.</summary>
    private readonly List<(int Shape, ulong Places, int Below)> entries = [];

    private readonly int[] topmost;
    private readonly Func<int, bool> isCut;

    /// <param name="isCut">Whether seams cut a shape, by its index.</param>
    internal LayerMap(SeamGrid grid, Drawing drawing, Func<int, bool> isCut)
    {
        this.isCut = isCut;
        topmost = new int[grid.CellCount];
        Array.Fill(topmost, None);
        var (xs, ys) = (Divided(grid.X), Divided(grid.Y));
        var found = new ulong[grid.CellCount];
        var touched = new List<int>();
        foreach (var shape in NearWholes(grid, drawing, isCut))
        {
            Scan.Cover(
                drawing.Shapes[shape].Footprint,
                xs,
                ys,
                (row, from, to) =>
                {
                    for (var column = from / Parts; column <= to / Parts; column++)
                    {
                        var (first, last) = (
                            Math.Max(0, from - (column * Parts)),
                            Math.Min(Parts - 1, to - (column * Parts))
                        );
                        var bits = ((1UL << (last + 1)) - 1) & ~((1UL << first) - 1);
                        var cell = grid.CellAt(column, row / Parts);
                        if (found[cell] == 0)
                            touched.Add(cell);
                        found[cell] |= bits << (row % Parts * Parts);
                    }
                }
            );
            foreach (var cell in touched)
            {
                entries.Add((shape, found[cell], topmost[cell]));
                topmost[cell] = entries.Count - 1;
                found[cell] = 0;
            }
            touched.Clear();
        }
    }

    /// <summary>Entries of all cells together.</summary>
    internal int Count => entries.Count;

    /// <summary>
    /// The pairs of shapes that lie on each other in a cell, one of them whole at least, and on which of its places.
    /// </summary>
    internal IEnumerable<(int Upper, int Lower, ulong Places)> Pairs(int cell)
    {
        var upper = 0;
        for (var i = topmost[cell]; i != None && upper < Deepest; i = entries[i].Below)
        {
            var lower = ++upper;
            for (var j = entries[i].Below; j != None && lower < Deepest; j = entries[j].Below)
            {
                lower++;
                if (
                    (entries[i].Places & entries[j].Places) is not 0 and var both
                    && !(isCut(entries[i].Shape) && isCut(entries[j].Shape))
                )
                    yield return (entries[i].Shape, entries[j].Shape, both);
            }
        }
    }

    /// <summary>Shapes that stay whole, and all that may come into a cell with one of them; rising.</summary>
    private static IEnumerable<int> NearWholes(SeamGrid grid, Drawing drawing, Func<int, bool> isCut)
    {
        // Two that come into one cell are no further apart than it is large.
        var cell = Math.Max(Widest(grid.X), Widest(grid.Y));
        var wholes = new STRtree<int>();
        for (var shape = 0; shape < drawing.Shapes.Length; shape++)
            if (!isCut(shape))
                wholes.Insert(Around(shape, cell), shape);
        return wholes.IsEmpty
            ? []
            : Enumerable
                .Range(0, drawing.Shapes.Length)
                .Where(shape => !isCut(shape) || wholes.Query(Around(shape, 0)).Count > 0);

        Envelope Around(int shape, int grown)
        {
            var box = drawing.Shapes[shape].Footprint.Bounds.Grown(grown);
            return new(box.Left, box.Right, box.Top, box.Bottom);
        }

        static int Widest(int[] lines) => lines.Zip(lines.Skip(1), (from, to) => to - from).Max();
    }

    /// <summary>The middles of all places along one axis.</summary>
    private static double[] Divided(int[] lines)
    {
        var places = new double[(lines.Length - 1) * Parts];
        for (var i = 0; i < places.Length; i++)
        {
            var (from, to) = (lines[i / Parts], lines[(i / Parts) + 1]);
            places[i] = from + ((to - (double)from) * ((i % Parts) + 0.5) / Parts);
        }
        return places;
    }
}
