namespace Splitter.Planning.Fit;

/// <summary>
/// How large a circle holds places that err together. Their errors are normal; scaled to equal axes they lie at a
/// distance r in a direction that has no preference, and r² has a chi-square distribution with as many degrees of
/// freedom as there are coordinates. What lies r times as far away needs a circle r times as large, so the share within
/// a diameter is the mean over directions of the share of distances that keep within it.
/// </summary>
internal static class CircleSpread
{
    private const double Share = 0.95;

    /// <summary>
    /// Directions over which the share is averaged: enough to come within 2 % of simulated junctions of five parts.
    /// </summary>
    private const int Directions = 1024;

    /// <summary>Halvings of the interval: to less than a millionth of it.</summary>
    private const int Halvings = 24;

    /// <summary>The diameter that the smallest circle around them exceeds once in twenty times.</summary>
    /// <param name="spread">
    /// Covariances of the x and y of each place but one, from that one: positive definite, since each is rounded by
    /// itself.
    /// </param>
    internal static double Within95(double[,] spread)
    {
        var axes = Axes(spread);
        var count = axes.GetLength(0);
        var circles = new double[Directions];
        var (direction, places) = (new double[count], new double[count + 2]);
        var steps = Steps(count);
        for (var i = 0; i < Directions; i++)
        {
            Turn(direction, steps, i + 1);
            for (var row = 0; row < count; row++)
            {
                places[row + 2] = 0;
                for (var column = 0; column <= row; column++)
                    places[row + 2] += axes[row, column] * direction[column];
            }
            circles[i] = SmallestCircle.Diameter(places);
        }
        var (low, high) = (0.0, circles.Max());
        while (ShareWithin(high, circles, count / 2) < Share)
            (low, high) = (high, 2 * high);
        for (var i = 0; i < Halvings; i++)
        {
            var middle = (low + high) / 2;
            if (ShareWithin(middle, circles, count / 2) < Share)
                low = middle;
            else
                high = middle;
        }
        return high;
    }

    /// <summary>
    /// Chi-square with 2 m degrees of freedom stays within x with 1 - exp(-x/2) times the sum of (x/2)^k/k!, k below m.
    /// </summary>
    private static double ShareWithin(double diameter, double[] circles, int m)
    {
        var sum = 0.0;
        foreach (var circle in circles)
        {
            var half = diameter / circle * (diameter / circle) / 2;
            var (term, terms) = (1.0, 1.0);
            for (var k = 1; k < m; k++)
            {
                term *= half / k;
                terms += term;
            }
            sum += 1 - (Math.Exp(-half) * terms);
        }
        return sum / circles.Length;
    }

    /// <summary>
    /// The directions are spread evenly by multiples of these, taken modulo 1: square roots of the first primes
    /// (Richtmyer's sequence, 1951), two for each place but one.
    /// </summary>
    private static double[] Steps(int count) =>
        [
            .. Enumerable
                .Range(2, int.MaxValue - 2)
                .Where(n => Enumerable.Range(2, n - 2).All(d => n % d != 0))
                .Take(count)
                .Select(prime => Math.Sqrt(prime)),
        ];

    /// <summary>The i-th direction: as many normal numbers (Box and Muller 1958), brought to a length of one.</summary>
    private static void Turn(double[] direction, double[] steps, int i)
    {
        var square = 0.0;
        for (var k = 0; k < direction.Length; k += 2)
        {
            var (u, v) = (i * steps[k] % 1, i * steps[k + 1] % 1);
            var far = Math.Sqrt(-2 * Math.Log(1 - u));
            var (sin, cos) = Math.SinCos(2 * Math.PI * v);
            (direction[k], direction[k + 1]) = (far * cos, far * sin);
            square += far * far;
        }
        for (var k = 0; k < direction.Length; k++)
            direction[k] /= Math.Sqrt(square);
    }

    /// <summary>The lower triangle whose product with its transpose is the covariance (Cholesky).</summary>
    private static double[,] Axes(double[,] spread)
    {
        var count = spread.GetLength(0);
        var axes = new double[count, count];
        for (var i = 0; i < count; i++)
        for (var j = 0; j <= i; j++)
        {
            var left = spread[i, j];
            for (var k = 0; k < j; k++)
                left -= axes[i, k] * axes[j, k];
            axes[i, j] = i == j ? Math.Sqrt(left) : left / axes[j, j];
        }
        return axes;
    }
}
