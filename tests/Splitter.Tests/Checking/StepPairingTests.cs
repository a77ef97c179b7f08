using System.Collections.Immutable;
using CsCheck;
using Splitter.Checking;
using SewnRun = Splitter.Checking.SewnRun;

namespace Splitter.Tests.Checking;

public sealed class StepPairingTests
{
    private static readonly Gen<KnownStep> Step =
        from kind in Gen.Int[0, 2]
        from thread in Gen.Int[0, 2]
        select new KnownStep(kind == 0 ? "corners" : "body", FormattableString.Invariant($"thread {thread}"), null);

    /// <summary>Whatever threads repeat: each step sews its own ground.</summary>
    [Fact]
    public void AStepMoreOrFewerLeavesAllOthersPaired() =>
        (
            from steps in Step.Array[1, 12]
            from at in Gen.Int[0, steps.Length - 1]
            select (Steps: steps.ToImmutableArray(), At: at)
        ).Holds(given =>
        {
            var (steps, at) = given;
            var (fewer, before, after) = (steps.RemoveAt(at), Runs(steps), Runs(steps).RemoveAt(at));
            after = [.. after.Select((run, i) => run with { Step = i + 1 })];
            var gone = StepPairing.Pair(steps, fewer, before, after, RunPairing.Pair(before, after));
            var more = StepPairing.Pair(fewer, steps, after, before, RunPairing.Pair(after, before));
            return gone.SequenceEqual(
                    steps.Select(
                        (_, i) =>
                            new StepPair(
                                i + 1,
                                i == at ? 0
                                    : i < at ? i + 1
                                    : i
                            )
                    )
                ) && more.SequenceEqual(gone.Select(pair => new StepPair(pair.Now, pair.Was)));
        });

    /// <summary>
    /// Where nothing is known of stitches, threads of a kind are paired as a longest common subsequence has them: as
    /// many as any way to leave steps out of both sides gives.
    /// </summary>
    [Fact]
    public void AsManyStepsArePairedAsInTheLongestCommonSubsequence() =>
        Gen.Select(Step.Array[0, 8], Step.Array[0, 8]).Holds(given => IsLongest(given.Item1, given.Item2));

    private static bool IsLongest(KnownStep[] was, KnownStep[] now)
    {
        var pairs = StepPairing.Pair([.. was], [.. now], [], [], []);
        var both = pairs.Where(pair => pair is { Was: > 0, Now: > 0 }).ToList();
        return both.All(pair => was[pair.Was - 1] == now[pair.Now - 1])
            && both.Count == Longest(was, now)
            && Numbers(was).SequenceEqual(pairs.Select(p => p.Was).Where(n => n > 0))
            && Numbers(now).SequenceEqual(pairs.Select(p => p.Now).Where(n => n > 0));
    }

    private static IEnumerable<int> Numbers(KnownStep[] steps) => Enumerable.Range(1, steps.Length);

    /// <summary>By trying every choice of steps.</summary>
    private static int Longest(KnownStep[] was, KnownStep[] now) =>
        Enumerable
            .Range(0, 1 << was.Length)
            .Select(chosen => was.Where((_, i) => (chosen & (1 << i)) != 0).ToList())
            .Where(some => Follows(some, now))
            .Max(some => some.Count);

    private static bool Follows(List<KnownStep> some, KnownStep[] now)
    {
        var next = 0;
        foreach (var step in now)
            if (next < some.Count && some[next] == step)
                next++;
        return next == some.Count;
    }

    private static ImmutableArray<SewnRun> Runs(ImmutableArray<KnownStep> steps) =>
        [.. steps.Select((_, i) => new SewnRun(i + 1, [new(50_000 * i, 0), new(50_000 * i, 3000)], ["sea", "sea"]))];
}
