using Splitter.Geometry;

namespace Splitter.Stitching.Density;

/// <summary>
/// Thread that is not laid yet, or still lies there: by how much it would change what lies on each square.
/// </summary>
internal readonly ref struct ThreadChange
{
    /// <summary>Around most ways no more quarters lie: what is noted of them needs no memory of its own.</summary>
    internal const int FewQuarters = 256;

    private readonly QuarterNumbers near;
    private readonly Span<long> more;

    /// <param name="box">All thread begins and ends in it.</param>
    /// <param name="few">Nothing yet: place for <see cref="FewQuarters"/>.</param>
    internal ThreadChange(Box box, Span<long> few)
    {
        near = new(box.Grown(ThreadGrid.ThreadWidth / 2));
        more = near.Count <= few.Length ? few : new long[near.Count];
    }

    /// <inheritdoc cref="ThreadGrid.Lay(Point, Point, int)"/>
    internal void Lay(Point from, Point to, int breadth)
    {
        foreach (var (quarter, area) in new CoveredQuarters(from, to, breadth))
            more[near[quarter]] += area;
    }

    /// <inheritdoc cref="ThreadGrid.Lay(ReadOnlySpan{Point}, int)"/>
    internal void Lay(ReadOnlySpan<Point> way, int breadth)
    {
        for (var i = 1; i < way.Length; i++)
            Lay(way[i - 1], way[i], breadth);
    }

    /// <summary>For <c>foreach</c>: squares that change, and by how much, µm².</summary>
    public Enumerator GetEnumerator() => new(this);

    internal ref struct Enumerator(ThreadChange change)
    {
        private readonly ThreadChange change = change;
        private int row;
        private int column = -1;

        public (Square Square, long By) Current { get; private set; }

        public bool MoveNext()
        {
            var more = change.more;
            var columns = change.near.Columns;
            for (; row + 1 < change.near.Rows; (row, column) = (row + 1, -1))
            {
                var first = row * columns;
                while (++column + 1 < columns)
                {
                    var i = first + column;
                    var by = more[i] + more[i + 1] + more[i + columns] + more[i + columns + 1];
                    if (by == 0)
                        continue;
                    var quarter = change.near[i];
                    Current = (new(quarter.Column, quarter.Row), by);
                    return true;
                }
            }
            return false;
        }
    }
}
