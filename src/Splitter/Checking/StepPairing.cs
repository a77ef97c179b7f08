using System.Collections.Immutable;

namespace Splitter.Checking;

/// <summary>A step before and after, by its number from 1; 0 where it is new, or gone.</summary>
internal readonly record struct StepPair(int Was, int Now);

/// <summary>
/// Which step of a part became which. Of all ways to pair steps of a kind in their order, the one that keeps most of
/// what is sewn and of what it is sewn with: a longest common subsequence with weights. A step more or less then
/// changes no other.
/// </summary>
internal static class StepPairing
{
    /// <summary>What the same thread weighs, against so many percent of a step's stitches.</summary>
    private const int SameThread = 100;

    /// <summary>In the order of the machine.</summary>
    /// <param name="partner">For each run of the earlier part its partner's index, or -1.</param>
    internal static ImmutableArray<StepPair> Pair(
        ImmutableArray<KnownStep> was,
        ImmutableArray<KnownStep> now,
        ImmutableArray<SewnRun> before,
        ImmutableArray<SewnRun> after,
        int[] partner
    )
    {
        var shares = Shares(before, after, partner);
        return Align(was.Length, now.Length, Weight);

        int Weight(int i, int j) =>
            was[i - 1].Kind != now[j - 1].Kind
                ? 0
                : shares.GetValueOrDefault(new(i, j)) + (was[i - 1].Thread == now[j - 1].Thread ? SameThread : 0);
    }

    /// <summary>
    /// Percent of an earlier step's stitches that a later one sews; at least one where there are any.
    /// </summary>
    private static Dictionary<StepPair, int> Shares(
        ImmutableArray<SewnRun> before,
        ImmutableArray<SewnRun> after,
        int[] partner
    )
    {
        var sizes = before.GroupBy(r => r.Step).ToDictionary(step => step.Key, step => step.Sum(r => r.Points.Length));
        return before
            .Index()
            .Where(run => partner[run.Index] >= 0)
            .GroupBy(run => new StepPair(run.Item.Step, after[partner[run.Index]].Step), run => run.Item.Points.Length)
            .ToDictionary(pair => pair.Key, pair => Math.Max(1, pair.Sum() * 100 / sizes[pair.Key.Was]));
    }

    private static ImmutableArray<StepPair> Align(int rows, int columns, Func<int, int, int> weight)
    {
        var best = new int[rows + 1, columns + 1];
        for (var i = 1; i <= rows; i++)
        for (var j = 1; j <= columns; j++)
            best[i, j] = Math.Max(best[i - 1, j - 1] + weight(i, j), Math.Max(best[i - 1, j], best[i, j - 1]));
        var pairs = new Stack<StepPair>();
        for (var (i, j) = (rows, columns); i > 0 || j > 0; )
        {
            if (i > 0 && j > 0 && weight(i, j) is > 0 and var like && best[i, j] == best[i - 1, j - 1] + like)
                pairs.Push(new(i--, j--));
            else if (i == 0 || (j > 0 && best[i, j] == best[i, j - 1]))
                pairs.Push(new(0, j--));
            else
                pairs.Push(new(i--, 0));
        }
        return [.. pairs];
    }
}
