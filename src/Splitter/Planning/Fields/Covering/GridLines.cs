namespace Splitter.Planning.Fields.Covering;

/// <summary>The lines of a grid along one axis, µm, ascending, at any distances; cells lie between them.</summary>
internal static class GridLines
{
    /// <summary>Lines about a step apart from end to end, and more of them where something begins or ends.</summary>
    internal static int[] Even(int from, int to, int step, IEnumerable<int> more)
    {
        var count = Math.Max(1, (to - from) / step);
        var even = Enumerable.Range(0, count + 1).Select(i => from + (int)((long)(to - from) * i / count));
        return [.. even.Concat(more.Where(v => v > from && v < to)).Distinct().Order()];
    }

    /// <summary>The last line at or before a value: the cell that begins there; -1 when all lie behind it.</summary>
    internal static int CellOf(int[] lines, int value)
    {
        var found = Array.BinarySearch(lines, value);
        return found >= 0 ? found : ~found - 1;
    }

    /// <summary>The last line at or before a value; the first one when all lie behind it.</summary>
    internal static int AtOrBefore(int[] lines, int value) => Math.Max(0, CellOf(lines, value));

    /// <summary>The first line at or after a value; the last one when all lie before it.</summary>
    internal static int AtOrAfter(int[] lines, int value)
    {
        var found = Array.BinarySearch(lines, value);
        return Math.Min(lines.Length - 1, found >= 0 ? found : ~found);
    }
}
