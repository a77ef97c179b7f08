using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>
/// The surface at every node of a lattice twice as fine as the grid: in the middle of each cell, on the middles of its
/// sides and on its corners. Scan lines do that far quicker than asking place by place.
/// </summary>
internal sealed class SurfaceScan
{
    /// <summary>Nothing is sewn there.</summary>
    internal const int Bare = -1;

    private readonly SeamGrid grid;
    private readonly int columns;
    private readonly int[] tops;

    /// <summary>For each cell the narrow stroke that runs through it.</summary>
    private readonly int[] strokes;

    internal SurfaceScan(Surface surface, SeamGrid grid)
    {
        this.grid = grid;
        int[] xs = Doubled(grid.Xs);
        int[] ys = Doubled(grid.Ys);
        columns = xs.Length;
        tops = new int[xs.Length * ys.Length];
        Array.Fill(tops, Bare);
        strokes = new int[grid.Columns * grid.Rows];
        Array.Fill(strokes, Bare);
        var shapes = surface.Drawing.Shapes;
        for (var i = 0; i < shapes.Length; i++)
        {
            if (shapes[i] is not RunShape)
                Cover(shapes[i].Footprint, xs, ys, i);
            foreach (var line in Strokes(surface, i))
                Walk(line, i);
        }
    }

    /// <summary>The shape that shows at a node of the lattice, or <see cref="Bare"/>.</summary>
    internal int TopAt(int column, int row) => tops[(row * columns) + column];

    /// <summary>The narrow stroke that must be cut somewhere and runs through a cell, or <see cref="Bare"/>.</summary>
    internal int StrokeIn(int cell) => strokes[cell];

    private static int[] Doubled(ImmutableArray<int> lines) =>
        [
            .. Enumerable
                .Range(0, (2 * lines.Length) - 1)
                .Select(i => i % 2 == 0 ? lines[i / 2] : (lines[i / 2] + lines[(i / 2) + 1]) / 2),
        ];

    /// <summary>Middle lines of runs, and of columns so narrow that cells may miss them.</summary>
    private IEnumerable<Polyline> Strokes(Surface surface, int shape) =>
        !surface.IsCut(shape) ? []
        : surface.Drawing.Shapes[shape] is RunShape run ? run.Lines
        : surface.Drawing.Shapes[shape] is SatinShape satin && IsNarrow(surface, shape)
            ? satin.Columns.Select(c => new Polyline([.. c.Rungs.Select(r => r.Middle)]))
        : [];

    /// <summary>A stroke of fewer cells than this may slip through the grid where it runs obliquely.</summary>
    internal bool IsNarrow(Surface surface, int shape) =>
        surface.Drawing.Shapes[shape] is RunShape || surface.WidthOf(shape) < 3 * grid.Step;

    /// <summary>Marks cells along a line so that each shares a side with the next.</summary>
    private void Walk(Polyline line, int shape)
    {
        var last = (Column: -1, Row: -1);
        for (var i = 1; i < line.Points.Length; i++)
        {
            var (from, to) = (line.Points[i - 1], line.Points[i]);
            var count = Math.Max(1, (int)Math.Ceiling(from.DistanceTo(to) / (grid.Step / 4.0)));
            for (var k = 0; k <= count; k++)
            {
                var p = from.Towards(to, (double)k / count);
                if (p.X < grid.Xs[0] || p.X > grid.Xs[^1] || p.Y < grid.Ys[0] || p.Y > grid.Ys[^1])
                    continue;
                var (column, row) = (grid.Column(p.X), grid.Row(p.Y));
                if (last.Column >= 0 && last.Column != column && last.Row != row)
                    strokes[grid.At(column, last.Row)] = shape;
                strokes[grid.At(column, row)] = shape;
                last = (column, row);
            }
        }
    }

    private void Cover(Region region, int[] xs, int[] ys, int shape)
    {
        if (region.IsEmpty)
            return;
        var (top, bottom) = (FirstFrom(ys, region.Bounds.Top), FirstFrom(ys, region.Bounds.Bottom + 1));
        var crossings = new List<double>[bottom - top];
        for (var i = 0; i < crossings.Length; i++)
            crossings[i] = [];
        foreach (var ring in region.Rings)
            for (int i = 0, j = ring.Points.Length - 1; i < ring.Points.Length; j = i++)
            {
                var (a, b) =
                    ring.Points[j].Y < ring.Points[i].Y
                        ? (ring.Points[j], ring.Points[i])
                        : (ring.Points[i], ring.Points[j]);
                for (var row = FirstFrom(ys, a.Y); row < ys.Length && ys[row] < b.Y; row++)
                    crossings[row - top].Add(a.X + ((b.X - (double)a.X) * (ys[row] - a.Y) / (b.Y - (double)a.Y)));
            }
        for (var row = top; row < bottom; row++)
        {
            var along = crossings[row - top];
            along.Sort();
            for (var k = 0; k + 1 < along.Count; k += 2)
            {
                var from = FirstFrom(xs, (int)Math.Ceiling(along[k]));
                var to = FirstFrom(xs, (int)Math.Floor(along[k + 1]) + 1);
                if (from < to)
                    Array.Fill(tops, shape, (row * columns) + from, to - from);
            }
        }
    }

    /// <summary>Index of the first line at or after a place.</summary>
    private static int FirstFrom(int[] lines, int place)
    {
        var index = Array.BinarySearch(lines, place);
        if (index < 0)
            return ~index;
        // Lines closer than two micrometres may have equal middles.
        while (index > 0 && lines[index - 1] == place)
            index--;
        return index;
    }
}
