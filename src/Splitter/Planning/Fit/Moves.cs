namespace Splitter.Planning.Fit;

/// <summary>By how much one standard deviation of each independent error moves a place of a hooping, µm.</summary>
/// <param name="Stride">Errors that each hooping brings: of setting it, then those of its cloth.</param>
internal sealed record Moves(double[] X, double[] Y, int Stride)
{
    /// <summary>How far each error moves this hooping away from another one.</summary>
    internal Moves From(Moves other)
    {
        var count = Math.Max(X.Length, other.X.Length);
        var (x, y) = (new double[count], new double[count]);
        for (var c = 0; c < count; c++)
        {
            var (ax, ay) = At(c);
            var (bx, by) = other.At(c);
            (x[c], y[c]) = (ax - bx, ay - by);
        }
        return new(x, y, Stride);
    }

    /// <summary>The same but for the first kinds of errors that a hooping brings.</summary>
    internal Moves Without(int hooping, int kinds)
    {
        var (x, y) = ((double[])X.Clone(), (double[])Y.Clone());
        Array.Clear(x, hooping * Stride, kinds);
        Array.Clear(y, hooping * Stride, kinds);
        return new(x, y, Stride);
    }

    /// <summary>How these moves spread together with those of another hooping, µm².</summary>
    internal (double XX, double XY, double YX, double YY) With(Moves other)
    {
        var (xx, xy, yx, yy) = (0.0, 0.0, 0.0, 0.0);
        for (var c = 0; c < Math.Min(X.Length, other.X.Length); c++)
        {
            xx += X[c] * other.X[c];
            xy += X[c] * other.Y[c];
            yx += Y[c] * other.X[c];
            yy += Y[c] * other.Y[c];
        }
        return (xx, xy, yx, yy);
    }

    /// <summary>The mean square of the moves that errors of one kind make in all hoopings, µm².</summary>
    internal double Square(int kind)
    {
        var sum = 0.0;
        for (var c = kind; kind < Stride && c < X.Length; c += Stride)
            sum += (X[c] * X[c]) + (Y[c] * Y[c]);
        return sum;
    }

    private (double X, double Y) At(int c) => c < X.Length ? (X[c], Y[c]) : default;
}
