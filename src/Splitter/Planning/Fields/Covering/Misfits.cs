using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning.Fit;

namespace Splitter.Planning.Fields.Covering;

/// <summary>
/// How well the fields of a cover will meet, before anything is known of seams and corners: what one cover is compared
/// with another by. Every field is set by the neighbour that leaves it with the least squared error since the first one
/// (Dijkstra 1959), with two corners in opposite ends of their common ground; where two fields share ground with
/// something drawn, they miss each other by what adds up on their ways to the field where these ways part.
/// </summary>
internal sealed class Misfits
{
    private readonly CoverTask task;
    private readonly CoverGrid grid;

    internal Misfits(CoverTask task, CoverGrid grid) => (this.task, this.grid) = (task, grid);

    /// <summary>The sum over all meetings; without bound where fields do not reach each other.</summary>
    internal double Sum(ImmutableArray<Field> fields)
    {
        // The eighth power of misfits: nearly the worst one alone, and yet every one counts, so that small steps lead
        // somewhere. Products and roots come out alike on every machine, powers may not.
        var sum = 0.0;
        foreach (var square in Squares(fields))
            sum += square * square * square * square;
        return sum;
    }

    /// <summary>What the sum becomes when every misfit grows by a factor.</summary>
    internal static double Scaled(double sum, double factor) => sum * Eighth(factor);

    /// <summary>The one misfit that has this sum, in errors of setting one corner: about the worst of all.</summary>
    internal static double Root(double sum) => Math.Sqrt(Math.Sqrt(Math.Sqrt(sum)));

    private static double Eighth(double factor)
    {
        var fourth = factor * factor * factor * factor;
        return fourth * fourth;
    }

    private IEnumerable<double> Squares(ImmutableArray<Field> fields)
    {
        if (task.Rules is null)
            yield break;
        var (donors, depths) = Donors(fields);
        if (donors is null)
        {
            yield return double.PositiveInfinity;
            yield break;
        }
        var settings = new Point[fields.Length][];
        for (var i = 0; i < fields.Length; i++)
            if (donors[i] >= 0)
                settings[i] = Set(task.Shared(fields[i], fields[donors[i]]));
        for (var a = 0; a < fields.Length; a++)
        for (var b = a + 1; b < fields.Length; b++)
        {
            var common = task.Template.Ground(fields[a]).Common(task.Template.Ground(fields[b])).Common(task.Bounds);
            if (!common.IsEmpty && grid.Drawn(common))
                yield return Math.Max(Between(a, b, From(common)), Between(a, b, To(common)));
        }

        double Between(int a, int b, Point at)
        {
            var sum = 0.0;
            while (a != b)
            {
                if (depths[a] < depths[b])
                    (a, b) = (b, a);
                sum += CornerFit.Variance(settings[a], CornerFit.OneInAll, at);
                a = donors[a];
            }
            return sum;
        }
    }

    /// <summary>
    /// For each field its donor, -1 for the first, and how many lie before it; null when one cannot be reached.
    /// </summary>
    private (int[]? Donors, int[] Depths) Donors(ImmutableArray<Field> fields)
    {
        var (donors, depths, errors) = (new int[fields.Length], new int[fields.Length], new double[fields.Length]);
        Array.Fill(errors, double.PositiveInfinity);
        var done = new bool[fields.Length];
        var first = FirstField.Among(fields, task.Held, task.Middle) ?? 0;
        (errors[first], donors[first]) = (0, -1);
        for (var left = fields.Length; left > 0; left--)
        {
            var next = -1;
            for (var i = 0; i < fields.Length; i++)
                if (!done[i] && (next < 0 || errors[i] < errors[next]))
                    next = i;
            if (double.IsPositiveInfinity(errors[next]))
                return (null, depths);
            done[next] = true;
            for (var i = 0; i < fields.Length; i++)
            {
                if (done[i])
                    continue;
                var common = task.Shared(fields[i], fields[next]);
                if (common.IsEmpty || !CommonGround.HoldsTwo(common, task.Rules!))
                    continue;
                var error = errors[next] + CornerFit.FarthestError(common, fields[i].Usable);
                if (error < errors[i])
                    (errors[i], donors[i], depths[i]) = (error, next, depths[next] + 1);
            }
        }
        return (donors, depths);
    }

    private static Point[] Set(Box common) => [new(common.Left, common.Top), new(common.Right, common.Bottom)];

    // A seam runs along the longer way through common ground.
    private static Point From(Box common) =>
        common.Width > common.Height ? new(common.Left, common.Centre.Y) : new(common.Centre.X, common.Top);

    private static Point To(Box common) =>
        common.Width > common.Height ? new(common.Right, common.Centre.Y) : new(common.Centre.X, common.Bottom);
}
