namespace Splitter.Benchmarks.Least;

/// <summary>Prices at the places of a lattice and half-way between them, each looked up once.</summary>
internal sealed class FinePrices
{
    private readonly Lattice lattice;
    private readonly LeastPrice price;
    private readonly int columns;
    private readonly double[] known;

    internal FinePrices(Lattice lattice, LeastPrice price)
    {
        (this.lattice, this.price) = (lattice, price);
        columns = (2 * lattice.Columns) - 1;
        known = new double[columns * ((2 * lattice.Y.Length) - 1)];
        Array.Fill(known, double.NaN);
    }

    /// <summary>The least price along the link from a place to another, or beside it by a quarter of a step.</summary>
    internal double LeastBetween(int place, int dx, int dy)
    {
        var (x, y) = (2 * (place % lattice.Columns), 2 * (place / lattice.Columns));
        var parts = 2 * Math.Max(Math.Abs(dx), dy);
        var least = double.PositiveInfinity;
        for (var k = 0; k <= parts; k++)
        {
            var (acrossX, acrossY) = (2.0 * dx * k / parts, 2.0 * dy * k / parts);
            least = Math.Min(least, At(x + (int)Math.Floor(acrossX), y + (int)Math.Floor(acrossY)));
            least = Math.Min(least, At(x + (int)Math.Ceiling(acrossX), y + (int)Math.Ceiling(acrossY)));
        }
        return least;
    }

    private double At(int x, int y)
    {
        ref var found = ref known[(y * columns) + x];
        if (double.IsNaN(found))
            found = price.At(lattice.X[0] + (x * lattice.Step / 2.0), lattice.Y[0] + (y * lattice.Step / 2.0));
        return found;
    }
}
