using System.Runtime.InteropServices;

namespace Splitter.Parts;

/// <summary>
/// Cells by what the way to them costs: the cheapest first, of equals the one with the lower number. They wait in
/// buckets of costs (Dial 1969, from memory). No step costs less than a bucket is wide, so that cells that are reached
/// from one bucket go to later ones, and each bucket need be sorted only once, when its turn comes.
/// </summary>
/// <param name="leastStep">What a step from cell to cell costs at least.</param>
internal sealed class CellQueue(double leastStep)
{
    private readonly List<List<Waiting>> buckets = [];
    private int turn;
    private int taken;

    /// <summary>Sorted often: nothing is asked but what tells two of them apart.</summary>
    private readonly record struct Waiting(double Cost, int Cell) : IComparable<Waiting>
    {
        public int CompareTo(Waiting other) =>
            Cost < other.Cost ? -1
            : Cost > other.Cost ? 1
            : Cell.CompareTo(other.Cell);
    }

    internal void Clear()
    {
        foreach (var bucket in buckets)
            bucket.Clear();
        (turn, taken) = (0, 0);
    }

    internal void Add(int cell, double cost)
    {
        var bucket = (int)(cost / leastStep);
        while (buckets.Count <= bucket)
            buckets.Add([]);
        buckets[bucket].Add(new(cost, cell));
    }

    /// <summary>Takes the cheapest one; false when none is left.</summary>
    internal bool TryTake(out int cell, out double cost)
    {
        (cell, cost) = (-1, 0);
        while (turn < buckets.Count && taken == buckets[turn].Count)
            (turn, taken) = (turn + 1, 0);
        if (turn == buckets.Count)
            return false;
        if (taken == 0)
            CollectionsMarshal.AsSpan(buckets[turn]).Sort();
        (cost, cell) = buckets[turn][taken++];
        return true;
    }
}
