namespace Splitter.Correcting;

/// <summary>
/// Least squares with a few columns, and the test whether what they leave is chance. Columns are brought to right
/// angles by Gram and Schmidt; those that the others nearly make up are left out, and have a coefficient of zero.
/// </summary>
internal sealed class LinearFit
{
    /// <summary>
    /// A column of which less than this share stands at right angles to the others says nothing of its own.
    /// </summary>
    private const double Distinct = 1e-3;

    private readonly int size;
    private readonly double[][] columns;

    /// <summary>
    /// At right angles to each other and of length 1: first those of the columns, then all that is left of space.
    /// </summary>
    private readonly List<double[]> axes = [];

    /// <summary>Which column each of the first axes is of.</summary>
    private readonly List<int> kept = [];

    internal LinearFit(int size, params double[][] columns)
    {
        (this.size, this.columns) = (size, columns);
        for (var i = 0; i < columns.Length; i++)
            if (TryAdd(columns[i]))
                kept.Add(i);
        for (var i = 0; i < size && axes.Count < size; i++)
        {
            var unit = new double[size];
            unit[i] = 1;
            TryAdd(unit);
        }
    }

    /// <summary>Degrees of freedom that the columns leave.</summary>
    internal int Left => size - kept.Count;

    /// <summary>For each column how much of it fits the values best.</summary>
    internal double[] Coefficients(double[] values)
    {
        var found = new double[columns.Length];
        var rest = (double[])values.Clone();
        // From the last: its axis has nothing of the columns after it.
        for (var k = kept.Count - 1; k >= 0; k--)
        {
            var column = columns[kept[k]];
            found[kept[k]] = Dot(rest, axes[k]) / Dot(column, axes[k]);
            for (var i = 0; i < size; i++)
                rest[i] -= found[kept[k]] * column[i];
        }
        return found;
    }

    /// <summary>For each value, and then for each column, what a unit of the value adds to its coefficient.</summary>
    internal double[][] Shares() =>
        [
            .. Enumerable
                .Range(0, size)
                .Select(i =>
                {
                    var unit = new double[size];
                    unit[i] = 1;
                    return Coefficients(unit);
                }),
        ];

    /// <summary>
    /// The squared length of what is left of the values, in standard deviations: with <see cref="Left"/> degrees of
    /// freedom if they are normal with this covariance and otherwise made up of the columns.
    /// </summary>
    /// <param name="spread">Covariance of the values, positive definite.</param>
    internal double Unexplained(double[] values, double[,] spread)
    {
        var left = new double[Left];
        var among = new double[Left, Left];
        for (var i = 0; i < Left; i++)
        {
            var axis = axes[kept.Count + i];
            left[i] = Dot(values, axis);
            var spreadAlong = Times(spread, axis);
            for (var j = 0; j <= i; j++)
                among[i, j] = among[j, i] = Dot(spreadAlong, axes[kept.Count + j]);
        }
        return SquaredDeviations(left, among);
    }

    /// <summary>v' S^-1 v, by Cholesky's triangle of S.</summary>
    internal static double SquaredDeviations(double[] values, double[,] spread)
    {
        var count = values.Length;
        var triangle = new double[count, count];
        var (solved, sum) = (new double[count], 0.0);
        for (var i = 0; i < count; i++)
        {
            solved[i] = values[i];
            for (var j = 0; j <= i; j++)
            {
                var left = spread[i, j];
                for (var k = 0; k < j; k++)
                    left -= triangle[i, k] * triangle[j, k];
                triangle[i, j] = i == j ? Math.Sqrt(left) : left / triangle[j, j];
                if (j < i)
                    solved[i] -= triangle[i, j] * solved[j];
            }
            solved[i] /= triangle[i, i];
            sum += solved[i] * solved[i];
        }
        return sum;
    }

    private bool TryAdd(double[] column)
    {
        var length = Math.Sqrt(Dot(column, column));
        var axis = (double[])column.Clone();
        // Twice: once leaves rounding along the axes that are there.
        for (var pass = 0; pass < 2; pass++)
            foreach (var other in axes)
            {
                var along = Dot(axis, other);
                for (var i = 0; i < size; i++)
                    axis[i] -= along * other[i];
            }
        var rest = Math.Sqrt(Dot(axis, axis));
        if (rest <= Distinct * length) // Also a column of nothing.
            return false;
        for (var i = 0; i < size; i++)
            axis[i] /= rest;
        axes.Add(axis);
        return true;
    }

    private static double[] Times(double[,] matrix, double[] vector)
    {
        var result = new double[vector.Length];
        for (var i = 0; i < vector.Length; i++)
        for (var j = 0; j < vector.Length; j++)
            result[i] += matrix[i, j] * vector[j];
        return result;
    }

    private static double Dot(double[] a, double[] b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.Length; i++)
            sum += a[i] * b[i];
        return sum;
    }
}
