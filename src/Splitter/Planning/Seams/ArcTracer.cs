using System.Collections.Immutable;

namespace Splitter.Planning.Seams;

/// <summary>Walks along the sides of cells that divide fields.</summary>
internal static class ArcTracer
{
    /// <summary>Right, down, left, up.</summary>
    private static readonly ImmutableArray<(int X, int Y)> Ways = [(1, 0), (0, 1), (-1, 0), (0, -1)];

    internal static ImmutableArray<Arc> Trace(SeamGrid grid, int[] fields)
    {
        var arcs = ImmutableArray.CreateBuilder<Arc>();
        var walked = new HashSet<(int Column, int Row, int Way)>();
        // From places where arcs end first; what is left then are closed ones.
        foreach (var closed in new[] { false, true })
            for (var row = 0; row <= grid.Rows; row++)
            for (var column = 0; column <= grid.Columns; column++)
            {
                if (!closed && !IsEnd(column, row))
                    continue;
                for (var way = 0; way < 4; way++)
                    if (IsDividing(column, row, way) && !walked.Contains((column, row, way)))
                        arcs.Add(Walk(column, row, way));
            }
        return arcs.ToImmutable();

        Arc Walk(int column, int row, int way)
        {
            var (one, other) = Sides(column, row, way);
            var nodes = ImmutableArray.CreateBuilder<(int, int)>();
            var start = (column, row);
            nodes.Add(start);
            while (true)
            {
                walked.Add((column, row, way));
                column += Ways[way].X;
                row += Ways[way].Y;
                walked.Add((column, row, (way + 2) % 4));
                nodes.Add((column, row));
                if ((column, row) == start || IsEnd(column, row))
                    return new(Math.Max(one, other), Math.Min(one, other), nodes.ToImmutable());
                var back = (way + 2) % 4;
                way = Enumerable.Range(0, 4).First(w => w != back && IsDividing(column, row, w));
            }
        }

        bool IsDividing(int column, int row, int way)
        {
            var (left, right) = Sides(column, row, way);
            return left != right;
        }

        bool IsEnd(int column, int row)
        {
            var count = 0;
            for (var way = 0; way < 4; way++)
                if (IsDividing(column, row, way))
                    count++;
            return count > 2;
        }

        (int Left, int Right) Sides(int column, int row, int way) =>
            way switch
            {
                0 => (Field(column, row - 1), Field(column, row)),
                1 => (Field(column, row), Field(column - 1, row)),
                2 => (Field(column - 1, row), Field(column - 1, row - 1)),
                _ => (Field(column - 1, row - 1), Field(column, row - 1)),
            };

        int Field(int column, int row) =>
            column < 0 || row < 0 || column >= grid.Columns || row >= grid.Rows ? -1 : fields[grid.At(column, row)];
    }
}
