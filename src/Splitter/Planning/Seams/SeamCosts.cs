using System.Collections.Immutable;
using System.Numerics;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>
/// States the division of the drawing as a <see cref="LabelProblem"/>: one node a cell of the grid, and behind them one
/// a shape. A boundary between cells costs what it shows, by the prices of <see cref="SeamPrice"/>.
/// </summary>
internal sealed class SeamCosts
{
    /// <summary>Costs are whole numbers of this share of a millimetre of plain fill.</summary>
    internal const int Unit = 10_000;

    /// <summary>
    /// What a millimetre along the edge of a shape costs more when the ground beside it is sewn later: its trap then
    /// lies on the shape instead of under it.
    /// </summary>
    private const double WrongWayUp = 0.15;

    /// <summary>The cells round one, the nearest first.</summary>
    private static readonly ImmutableArray<(int X, int Y)> Around =
    [
        (1, 0),
        (0, 1),
        (-1, 0),
        (0, -1),
        (1, 1),
        (-1, 1),
        (-1, -1),
        (1, -1),
    ];

    /// <summary>Bands of the grid that are priced at once: a few for each thread, whose links stand in order.</summary>
    private const int Bands = 16;

    private readonly SeamGrid grid;
    private readonly Drawing drawing;
    private readonly Wholeness wholeness;

    /// <summary>For each cell the topmost shape at its middle that is not a line; -1 for none.</summary>
    private readonly int[] top;

    private SeamCosts(SeamGrid grid, Drawing drawing, Wholeness wholeness)
    {
        (this.grid, this.drawing, this.wholeness) = (grid, drawing, wholeness);
        top = new int[grid.CellCount];
        Array.Fill(top, -1);
    }

    /// <summary>Cells come first, row by row, then shapes.</summary>
    /// <param name="jobs">How many threads may work.</param>
    internal static LabelProblem State(
        SeamGrid grid,
        Drawing drawing,
        Wholeness wholeness,
        SeamRoom room,
        LayerMap layers,
        int jobs = 1
    )
    {
        var problem = new LabelProblem([.. grid.Fields, .. wholeness.Fields]);
        var costs = new SeamCosts(grid, drawing, wholeness);
        costs.FindTop();
        Range[] bands =
        [
            .. Enumerable
                .Range(0, Bands)
                .Select(i => new Range(grid.CellCount * i / Bands, grid.CellCount * (i + 1) / Bands)),
        ];
        Func<List<Link>>[] parts =
        [
            () => costs.Layer(layers),
            .. bands.Select(cells => (Func<List<Link>>)(() => costs.PriceLength(cells))),
            costs.PriceLines,
            .. bands.Select(cells => (Func<List<Link>>)(() => costs.PriceRoom(cells, room, problem))),
        ];
        foreach (var links in InOrder.Select(parts, jobs, part => part()))
            problem.AddLinks(links);
        return problem;
    }

    /// <summary>Finds what is on top of each cell.</summary>
    private void FindTop()
    {
        for (var shape = 0; shape < drawing.Shapes.Length; shape++)
        {
            var index = shape;
            if (drawing.Shapes[shape] is not RunShape)
                Scan.Cover(
                    drawing.Shapes[shape].Footprint,
                    grid.MiddleX,
                    grid.MiddleY,
                    (row, from, to) => Array.Fill(top, index, grid.CellAt(from, row), to - from + 1)
                );
        }
    }

    /// <summary>Asks that what lies over other things is sewn after them.</summary>
    private List<Link> Layer(LayerMap layers)
    {
        var links = new List<Link>();
        var wholes = new SortedDictionary<(int Upper, int Lower), double>();
        for (var cell = 0; cell < grid.CellCount; cell++)
        {
            var area = grid.Width(cell) * grid.Height(cell) / (Units.Millimetre * (double)Units.Millimetre);
            foreach (var (upper, lower, places) in layers.Pairs(cell))
            {
                var cost = area * BitOperations.PopCount(places) / LayerMap.Places * SeamPrice.Turned * Unit;
                if (!wholeness.IsCut(upper) && !wholeness.IsCut(lower))
                    wholes[(upper, lower)] = wholes.GetValueOrDefault((upper, lower)) + cost;
                else
                    // One of them is cut, and whoever has the cell sews it there.
                    links.Add(new(Node(upper), Node(lower), (long)cost, LinkKind.Over));
            }

            int Node(int shape) => wholeness.IsCut(shape) ? cell : grid.CellCount + shape;
        }
        foreach (var ((upper, lower), cost) in wholes)
            links.Add(new(grid.CellCount + upper, grid.CellCount + lower, (long)cost, LinkKind.Over));
        return links;
    }

    /// <summary>
    /// The length of a boundary is counted by how often it crosses lines between the middles of neighbours in eight
    /// directions (Cauchy and Crofton; Boykov and Kolmogorov 2003, ICCV, 26-33): slanting seams cost their true length
    /// within a few per cent, not that of their stairs. Upright and level ones cost it exactly, however narrow a cell
    /// is.
    /// </summary>
    private List<Link> PriceLength(Range cells)
    {
        var links = new List<Link>();
        for (var cell = cells.Start.Value; cell < cells.End.Value; cell++)
        {
            var (column, row) = (cell % grid.Columns, cell / grid.Columns);
            Add(cell, grid.CellAt(column + 1, row), static (dx, dy) => dy - (2 * Slanting(dx, dy)));
            Add(cell, grid.CellAt(column, row + 1), static (dx, dy) => dx - (2 * Slanting(dx, dy)));
            Add(cell, grid.CellAt(column + 1, row + 1), Slanting);
            Add(cell, grid.CellAt(column - 1, row + 1), Slanting);
        }
        return links;

        void Add(int a, int b, Func<double, double, double> length)
        {
            if (b < 0 || grid.Fields[a].Length == 0 || grid.Fields[b].Length == 0 || IsDecided(a, b))
                return;
            var (dx, dy) = ((grid.Width(a) + grid.Width(b)) / 2, (grid.Height(a) + grid.Height(b)) / 2);
            var millimetres = Math.Max(0, length(dx, dy)) / Units.Millimetre;
            links.Add(new(a, b, Math.Max(1, (long)(millimetres * Price(a, b) * Unit)), LinkKind.Apart));
            if (top[a] != top[b] && IsCut(top[a]) && IsCut(top[b]))
                links.Add(
                    new(
                        top[a] > top[b] ? a : b,
                        top[a] > top[b] ? b : a,
                        (long)(millimetres * WrongWayUp * Unit),
                        LinkKind.Over
                    )
                );
        }

        // Most cells lie in one field alone.
        bool IsDecided(int a, int b) => grid.Fields[a].Length == 1 && grid.Fields[b].Length == 1;

        // A quarter of a half turn for each direction: dx dy / (2 |e|) times pi / 4.
        static double Slanting(double dx, double dy) => Math.PI / 8 * dx * dy / Math.Sqrt((dx * dx) + (dy * dy));
    }

    /// <summary>The price of a millimetre of boundary between two cells.</summary>
    private double Price(int a, int b)
    {
        var shows =
            top[a] == top[b] ? Inside(top[a])
            : IsCut(top[a]) || IsCut(top[b]) ? SeamPrice.AlongEdge
            : 0;
        return shows + SeamPrice.Length;

        double Inside(int shape) => IsCut(shape) ? SeamPrice.Inside(drawing.Shapes[shape]) : 0;
    }

    private bool IsCut(int shape) => shape >= 0 && wholeness.IsCut(shape);

    private List<Link> PriceLines()
    {
        var links = new List<Link>();
        for (var shape = 0; shape < drawing.Shapes.Length; shape++)
            if (wholeness.IsCut(shape))
                foreach (var line in Lines.Of(drawing.Shapes[shape]))
                    grid.Walk(
                        line,
                        (before, after) =>
                        {
                            if (top[before] <= shape || top[after] <= shape)
                                links.Add(
                                    new(
                                        With(before, shape),
                                        With(after, shape),
                                        (long)(SeamPrice.LineCrossing * Unit),
                                        LinkKind.Apart
                                    )
                                );
                        }
                    );
        return links;
    }

    /// <summary>
    /// The cell that a line goes with: on the edge of a shape it belongs to the shape's side, since a seam along the
    /// edge is drawn beside it. Cells are too coarse to tell on which side of an edge a line lies.
    /// </summary>
    private int With(int cell, int line)
    {
        var (column, row) = (cell % grid.Columns, cell / grid.Columns);
        var best = cell;
        foreach (var (dx, dy) in Around)
            if (grid.CellAt(column + dx, row + dy) is >= 0 and var near && top[near] < line && top[near] > top[best])
                best = near;
        return best;
    }

    /// <summary>
    /// Asks for room between a seam and the edges of both grounds, for overlaps on both sides: of each cell by itself.
    /// </summary>
    private List<Link> PriceRoom(Range cells, SeamRoom room, LabelProblem problem)
    {
        for (var cell = cells.Start.Value; cell < cells.End.Value; cell++)
        {
            var fields = grid.Fields[cell];
            if (fields.Length < 2)
                continue;
            var isSewn = IsCut(top[cell]);
            var (x, y) = (grid.MiddleX[cell % grid.Columns], grid.MiddleY[cell / grid.Columns]);
            var area = grid.Width(cell) * grid.Height(cell) / (Units.Millimetre * (double)Units.Millimetre);
            var rooms = Array.ConvertAll(fields, field => room.FromEdge(field, x, y));
            var most = rooms.Max();
            for (var i = 0; i < fields.Length; i++)
            {
                var price =
                    SeamRoom.Preference(most - rooms[i]) + (isSewn ? room.Shortage(fields[i], new((int)x, (int)y)) : 0);
                problem.AddOwn(cell, fields[i], (long)(area * price * Unit));
            }
        }
        return [];
    }
}
