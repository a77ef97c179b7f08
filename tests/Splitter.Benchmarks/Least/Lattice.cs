using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Benchmarks.Least;

/// <summary>Evenly spread places over the ground of one field and a little beyond it.</summary>
internal sealed class Lattice
{
    /// <summary>Steps beyond the ground: as far as the longest link reaches.</summary>
    private const int Beyond = 2;

    private readonly int[] blocksX;
    private readonly int[] blocksY;
    private readonly Dictionary<(int, int), int[]> byBlock = [];
    private readonly ImmutableArray<Box> grounds;

    internal Lattice(ImmutableArray<Box> grounds, int field, int step)
    {
        (this.grounds, Step) = (grounds, step);
        Bounds = grounds[field].Grown(Beyond * step);
        (X, Y) = (Places(Bounds.Left, Bounds.Right), Places(Bounds.Top, Bounds.Bottom));
        blocksX = Blocks(X, grounds.SelectMany(g => new double[] { g.Left, g.Right }));
        blocksY = Blocks(Y, grounds.SelectMany(g => new double[] { g.Top, g.Bottom }));

        double[] Places(int from, int to) =>
            [.. Enumerable.Range(0, ((to - from) / step) + 1).Select(i => from + ((double)i * step))];

        static int[] Blocks(double[] places, IEnumerable<double> edges)
        {
            double[] rising = [.. edges.Distinct().Order()];
            return Array.ConvertAll(places, place => Scan.FirstFrom(rising, place));
        }
    }

    /// <summary>µm.</summary>
    internal int Step { get; }

    internal Box Bounds { get; }

    /// <summary>Where columns lie, rising, µm.</summary>
    internal double[] X { get; }

    /// <summary>Where rows lie, rising, µm.</summary>
    internal double[] Y { get; }

    internal int Columns => X.Length;

    internal int Count => X.Length * Y.Length;

    /// <summary>The fields whose ground holds a place, rising. Between the same edges they are the same.</summary>
    internal int[] FieldsAt(int place)
    {
        var (column, row) = (place % Columns, place / Columns);
        var block = (blocksX[column], blocksY[row]);
        return byBlock.TryGetValue(block, out var known)
            ? known
            : byBlock[block] = FieldsAt(new Point((int)X[column], (int)Y[row]));
    }

    internal int[] FieldsAt(Point at) => [.. Enumerable.Range(0, grounds.Length).Where(g => grounds[g].Contains(at))];
}
