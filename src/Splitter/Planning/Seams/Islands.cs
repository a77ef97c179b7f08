using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>Gives small patches of a field that lie apart from the rest of it to the field around them.</summary>
internal static class Islands
{
    /// <summary>
    /// A smaller patch, square mm, is no territory: sewing it in another hooping than all around it costs jumps and ties and
    /// shows a seam all round. Common practice, no source.
    /// </summary>
    private const double Smallest = 400;

    internal static void Absorb(SeamGrid grid, int[] fields)
    {
        var patchOf = new int[fields.Length];
        Array.Fill(patchOf, -1);
        var patches = new List<List<int>>();
        for (var cell = 0; cell < fields.Length; cell++)
            if (fields[cell] >= 0 && patchOf[cell] < 0)
                patches.Add(Flood(grid, fields, patchOf, cell, patches.Count));
        var areas = patches.ConvertAll(p => p.Sum(cell => Area(grid, cell)));
        var largest = patches
            .Select((p, i) => (Field: fields[p[0]], Index: i))
            .GroupBy(p => p.Field)
            .Select(g => g.OrderByDescending(p => areas[p.Index]).ThenBy(p => p.Index).First().Index)
            .ToHashSet();
        foreach (var index in Enumerable.Range(0, patches.Count).OrderBy(i => areas[i]).ThenBy(i => i))
        {
            if (largest.Contains(index) || areas[index] >= Smallest)
                continue;
            var around = patches[index]
                .SelectMany(cell => Neighbours(grid, cell))
                .Select(cell => fields[cell])
                .Where(f => f >= 0 && f != fields[patches[index][0]])
                .CountBy(f => f)
                .OrderByDescending(f => f.Value)
                .ThenBy(f => f.Key)
                .Select(f => f.Key)
                .Where(f => patches[index].TrueForAll(cell => grid.Allowed[cell].Contains(f)))
                .Cast<int?>()
                .FirstOrDefault();
            if (around is { } field)
                foreach (var cell in patches[index])
                    fields[cell] = field;
        }
    }

    private static List<int> Flood(SeamGrid grid, int[] fields, int[] patchOf, int start, int patch)
    {
        var found = new List<int> { start };
        patchOf[start] = patch;
        for (var i = 0; i < found.Count; i++)
            foreach (var next in Neighbours(grid, found[i]))
                if (patchOf[next] < 0 && fields[next] == fields[start])
                {
                    patchOf[next] = patch;
                    found.Add(next);
                }
        return found;
    }

    private static ImmutableArray<int> Neighbours(SeamGrid grid, int cell)
    {
        var (column, row) = (cell % grid.Columns, cell / grid.Columns);
        var next = ImmutableArray.CreateBuilder<int>(4);
        if (column > 0)
            next.Add(cell - 1);
        if (column + 1 < grid.Columns)
            next.Add(cell + 1);
        if (row > 0)
            next.Add(cell - grid.Columns);
        if (row + 1 < grid.Rows)
            next.Add(cell + grid.Columns);
        return next.DrainToImmutable();
    }

    private static double Area(SeamGrid grid, int cell)
    {
        var (width, height) = grid.Size(cell);
        return Units.ToMillimetres(width) * Units.ToMillimetres(height);
    }
}
