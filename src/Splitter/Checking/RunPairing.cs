using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Checking;

/// <summary>
/// Which run of a tape became which run of the part as it is now. Runs keep their order, so this is the cheapest
/// alignment of two sequences, as for texts (Needleman and Wunsch 1970): like runs cost little, and a run without a
/// partner costs what it is long.
/// </summary>
internal static class RunPairing
{
    /// <summary>
    /// What a run without a partner costs beside its size, µm: more than runs that moved a little, so that these are
    /// paired.
    /// </summary>
    private const double Alone = 10 * Units.Millimetre;

    /// <summary>Pairs beyond this are not weighed; what is left over then counts as gone and new.</summary>
    private const long MostPairs = 25_000_000;

    /// <summary>For each run of the tape the index of its partner, or -1.</summary>
    internal static int[] Pair(ImmutableArray<SewnRun> before, ImmutableArray<SewnRun> after)
    {
        var partner = new int[before.Length];
        Array.Fill(partner, -1);
        var (head, tail) = (0, 0);
        var shorter = Math.Min(before.Length, after.Length);
        while (head < shorter && before[head].SameAs(after[head]))
            partner[head] = head++;
        while (tail < shorter - head && SamePoints(before[^(tail + 1)], after[^(tail + 1)]))
        {
            partner[before.Length - tail - 1] = after.Length - tail - 1;
            tail++;
        }
        var (rows, columns) = (before.Length - head - tail, after.Length - head - tail);
        if ((long)rows * columns <= MostPairs)
            Align(before, after, head, rows, columns, partner);
        return partner;
    }

    /// <summary>A step more or less before it does not matter here.</summary>
    private static bool SamePoints(SewnRun one, SewnRun other) =>
        one.Points.AsSpan().SequenceEqual(other.Points.AsSpan());

    private static void Align(
        ImmutableArray<SewnRun> before,
        ImmutableArray<SewnRun> after,
        int head,
        int rows,
        int columns,
        int[] partner
    )
    {
        var cost = new double[rows + 1, columns + 1];
        for (var i = 1; i <= rows; i++)
            cost[i, 0] = cost[i - 1, 0] + Skipped(before[head + i - 1]);
        for (var j = 1; j <= columns; j++)
            cost[0, j] = cost[0, j - 1] + Skipped(after[head + j - 1]);
        for (var i = 1; i <= rows; i++)
        for (var j = 1; j <= columns; j++)
        {
            var (one, other) = (before[head + i - 1], after[head + j - 1]);
            cost[i, j] = Math.Min(
                cost[i - 1, j - 1] + Unlike(one, other),
                Math.Min(cost[i - 1, j] + Skipped(one), cost[i, j - 1] + Skipped(other))
            );
        }
        for (var (i, j) = (rows, columns); i > 0 && j > 0; )
        {
            var (one, other) = (before[head + i - 1], after[head + j - 1]);
            if (cost[i, j] == cost[i - 1, j - 1] + Unlike(one, other))
                partner[head + --i] = head + --j;
            else if (cost[i, j] == cost[i - 1, j] + Skipped(one))
                i--;
            else
                j--;
        }
    }

    private static double Skipped(SewnRun run) => Alone + ((run.Bounds.Width + (double)run.Bounds.Height) / 2);

    /// <summary>How far the edges of their boxes and their ends lie apart.</summary>
    private static double Unlike(SewnRun one, SewnRun other)
    {
        var (a, b) = (one.Bounds, other.Bounds);
        return Math.Abs((double)a.Left - b.Left)
            + Math.Abs((double)a.Right - b.Right)
            + Math.Abs((double)a.Top - b.Top)
            + Math.Abs((double)a.Bottom - b.Bottom)
            + ((one.Points[0].DistanceTo(other.Points[0]) + one.Points[^1].DistanceTo(other.Points[^1])) / 2);
    }
}
