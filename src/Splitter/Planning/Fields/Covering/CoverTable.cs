using System.Runtime.InteropServices;

namespace Splitter.Planning.Fields.Covering;

/// <summary>
/// A set-cover table: which of numbered sets covers which of numbered rows. Rows can be added as a search finds that
/// something more is asked for; nothing is ever taken out.
/// </summary>
internal sealed class CoverTable
{
    private readonly List<int>[] rowsOf;
    private readonly List<int[]> setsOf;

    internal CoverTable(int sets)
        : this(0, [.. Enumerable.Range(0, sets).Select(_ => new List<int>())]) { }

    /// <param name="rows">How many rows there are.</param>
    /// <param name="rowsOf">For each set the rows that it covers, ascending.</param>
    internal CoverTable(int rows, List<int>[] rowsOf)
    {
        this.rowsOf = rowsOf;
        var counts = new int[rows];
        for (var set = 0; set < rowsOf.Length; set++)
            foreach (var row in RowsOf(set))
                counts[row]++;
        setsOf = [.. counts.Select(count => new int[count])];
        // Set after set, so that each row has its sets in ascending order.
        Array.Clear(counts);
        for (var set = 0; set < rowsOf.Length; set++)
            foreach (var row in RowsOf(set))
                setsOf[row][counts[row]++] = set;
    }

    /// <summary>How many sets there are.</summary>
    internal int Sets => rowsOf.Length;

    /// <summary>How many rows there are.</summary>
    internal int Rows => setsOf.Count;

    /// <summary>The rows that a set covers, ascending.</summary>
    internal ReadOnlySpan<int> RowsOf(int set) => CollectionsMarshal.AsSpan(rowsOf[set]);

    /// <summary>The sets that cover a row, ascending.</summary>
    internal int[] SetsOf(int row) => setsOf[row];

    /// <summary>Adds a row that these sets cover, given in ascending order.</summary>
    internal void Add(int[] sets)
    {
        foreach (var set in sets)
            rowsOf[set].Add(setsOf.Count);
        setsOf.Add(sets);
    }
}
