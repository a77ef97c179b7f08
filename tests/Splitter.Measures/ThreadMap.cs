namespace Splitter.Measures;

/// <summary>
/// How much thread lies on each square millimetre, counted in layers: thread that covers the square once is one layer.
/// </summary>
public sealed class ThreadMap
{
    /// <summary>Thread is counted in lengths of this, mm.</summary>
    private const double Piece = 0.05;

    private readonly double[] layers;
    private readonly int[] holes;
    private readonly int columns;

    /// <summary>Counts the thread of a cloth.</summary>
    public ThreadMap(SewnCloth cloth)
    {
        columns = (int)Math.Ceiling(cloth.Width) + 2;
        layers = new double[columns * ((int)Math.Ceiling(cloth.Height) + 2)];
        holes = new int[layers.Length];
        foreach (var run in cloth.Runs)
        {
            foreach (var point in run.Points)
                if (SquareOf(point.X, point.Y) is { } square)
                    holes[square]++;
            for (var i = 1; i < run.Points.Count; i++)
                Lay(run.Points[i - 1], run.Points[i]);
        }
        Array.Sort(layers);
    }

    /// <summary>On the fullest square.</summary>
    public double Most => layers[^1];

    /// <summary>Needle penetrations in the square that has most.</summary>
    public int MostHoles => holes.Max();

    /// <summary>Squares with more than some layers.</summary>
    public int Above(double limit) => layers.Count(l => l > limit);

    /// <summary>What a share of the squares that have thread do not exceed.</summary>
    public double Share(double share)
    {
        var first = Array.FindIndex(layers, l => l > 0);
        return first < 0 ? 0 : layers[first + (int)((layers.Length - 1 - first) * share)];
    }

    private void Lay((int X, int Y) from, (int X, int Y) to)
    {
        var length = SewnRun.Distance(from, to);
        var count = (int)Math.Ceiling(length / Piece);
        for (var i = 0; i < count; i++)
        {
            var share = (i + 0.5) / count;
            var (x, y) = (from.X + ((to.X - from.X) * share), from.Y + ((to.Y - from.Y) * share));
            if (SquareOf(x, y) is { } square)
                layers[square] += length / count * SewnCloth.ThreadWidth;
        }
    }

    /// <summary>The square of a place in tenths of a millimetre; one of margin all round holds what pulls past the edge.</summary>
    private int? SquareOf(double x, double y)
    {
        var (column, row) = ((int)Math.Floor(x / 10) + 1, (int)Math.Floor(y / 10) + 1);
        return column >= 0 && column < columns && row >= 0 && row < layers.Length / columns
            ? (row * columns) + column
            : null;
    }
}
