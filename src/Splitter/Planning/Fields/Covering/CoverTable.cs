namespace Splitter.Planning.Fields.Covering;

/// <summary>
/// A set-cover table: which of numbered sets covers which of numbered rows. Rows can be added as a search finds that
/// something more is asked for; nothing is ever taken out.
/// </summary>
internal sealed class CoverTable
{
    private readonly List<int>[] rowsOf;
    private readonly List<int[]> setsOf = [];

    internal CoverTable(int sets)
    {
        rowsOf = [.. Enumerable.Range(0, sets).Select(_ => new List<int>())];
    }

    /// <summary>How many sets there are.</summary>
    internal int Sets => rowsOf.Length;

    /// <summary>How many rows there are.</summary>
    internal int Rows => setsOf.Count;

    /// <summary>The rows that a set covers, ascending.</summary>
    internal List<int> RowsOf(int set) => rowsOf[set];

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
