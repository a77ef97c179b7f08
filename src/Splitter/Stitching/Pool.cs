using Splitter.Geometry;

namespace Splitter.Stitching;

/// <summary>
/// Things with one or more places each, of which the one nearest to the needle is taken next. Places lie in square
/// cells, about two to a cell, and cells are looked at ring by ring around the needle.
/// </summary>
internal sealed class Pool
{
    private const double PlacesPerCell = 2;

    private readonly Dictionary<(int, int), List<int>> cells = [];
    private readonly (Point At, int Of, int Which)[] places;
    private readonly bool[] taken;
    private readonly Box box;
    private readonly int size;
    private int first;

    /// <param name="things">The places of each thing, in its own order.</param>
    internal Pool(IEnumerable<IEnumerable<Point>> things)
    {
        places = [.. things.SelectMany((thing, i) => thing.Select((at, which) => (at, i, which)))];
        Left = places.Length == 0 ? 0 : places[^1].Of + 1;
        taken = new bool[Left];
        box = Box.Around(places.Select(p => p.At));
        var area = Math.Max(box.Width, 1.0) * Math.Max(box.Height, 1.0);
        // A line of places has no area: its cells are at least as long as its share of it.
        var longest = Math.Max(box.Width, box.Height) / Math.Max(1.0, places.Length);
        size = 1 + (int)Math.Max(Math.Sqrt(area * PlacesPerCell / Math.Max(1, places.Length)), longest);
        for (var i = 0; i < places.Length; i++)
        {
            var cell = CellOf(places[i].At);
            if (!cells.TryGetValue(cell, out var list))
                cells.Add(cell, list = []);
            list.Add(i);
        }
    }

    /// <summary>How many things have not been taken.</summary>
    internal int Left { get; private set; }

    /// <summary>A thing that has been sewn with another one is not taken any more.</summary>
    internal void Remove(int thing)
    {
        if (taken[thing])
            return;
        taken[thing] = true;
        Left--;
    }

    /// <summary>
    /// Takes the thing with the nearest place, or the first when there is no needle yet; says which place.
    /// </summary>
    internal (int Thing, int Which) Take(Point? from)
    {
        while (taken[places[first].Of])
            first++;
        var place = places[from is { } at ? Nearest(at) : first];
        taken[place.Of] = true;
        Left--;
        return (place.Of, place.Which);
    }

    private int Nearest(Point from)
    {
        var (x, y) = CellOf(from);
        var (best, nearest) = (-1, double.PositiveInfinity);
        // What lies in ring n of cells is at least n - 1 cells away.
        for (var n = 0; best < 0 || (n - 1.0) * size <= nearest; n++)
        for (var dy = -n; dy <= n; dy++)
        for (var dx = -n; dx <= n; dx += Math.Abs(dy) == n || n == 0 ? 1 : 2 * n)
            if (cells.TryGetValue((x + dx, y + dy), out var list))
                Look(list);
        return best;

        void Look(List<int> list)
        {
            // What has been taken is dropped on the way, so that it is passed over once.
            list.RemoveAll(i => taken[places[i].Of]);
            foreach (var i in list)
                if (
                    places[i].At.DistanceTo(from) is var distance
                    && (distance < nearest || (distance == nearest && i < best)) // Not by the order of cells.
                )
                    (best, nearest) = (i, distance);
        }
    }

    private (int X, int Y) CellOf(Point p) => ((p.X - box.Left) / size, (p.Y - box.Top) / size);
}
