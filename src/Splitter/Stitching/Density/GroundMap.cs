using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Stitching.Density;

/// <summary>Which ground each quarter of a stretch of cloth belongs to, and whether any lies in a box.</summary>
internal sealed class GroundMap
{
    private readonly int top;

    /// <summary>From the topmost row on the quarters that belong to a ground, from left to right.</summary>
    private readonly (int Column, int Ground)[][] rows;

    internal GroundMap(ImmutableArray<ImmutableArray<Quarter>> grounds)
    {
        var quarters = grounds.Index().SelectMany(g => g.Item.Select(s => (s.Row, s.Column, Ground: g.Index))).ToList();
        var byRow = quarters.ToLookup(s => s.Row, s => (s.Column, s.Ground));
        top = quarters.Select(s => s.Row).DefaultIfEmpty().Min();
        var bottom = quarters.Select(s => s.Row).DefaultIfEmpty(top - 1).Max();
        rows = [.. Enumerable.Range(top, bottom - top + 1).Select(row => byRow[row].Order().ToArray())];
    }

    /// <summary>The place of the ground that a quarter belongs to; null when it belongs to none.</summary>
    internal int? GroundOf(Quarter quarter)
    {
        if (quarter.Row < top || quarter.Row >= top + rows.Length)
            return null;
        var row = rows[quarter.Row - top];
        var place = FirstFrom(row, quarter.Column);
        return place < row.Length && row[place].Column == quarter.Column ? row[place].Ground : null;
    }

    /// <summary>Whether a quarter that the box meets belongs to a ground.</summary>
    internal bool Meets(Box box)
    {
        var (first, last) = (Quarter.At(new(box.Left, box.Top)), Quarter.At(new(box.Right, box.Bottom)));
        for (var row = Math.Max(first.Row, top); row <= Math.Min(last.Row, top + rows.Length - 1); row++)
        {
            var place = FirstFrom(rows[row - top], first.Column);
            if (place < rows[row - top].Length && rows[row - top][place].Column <= last.Column)
                return true;
        }
        return false;
    }

    /// <summary>The place of the first quarter of a row that lies in a column or to the right of it.</summary>
    private static int FirstFrom((int Column, int Ground)[] row, int column)
    {
        var (low, high) = (0, row.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = row[middle].Column < column ? (middle + 1, high) : (low, middle);
        }
        return low;
    }
}
