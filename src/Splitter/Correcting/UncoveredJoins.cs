using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Planning;

namespace Splitter.Correcting;

/// <summary>Joins that a correction leaves open, and where measuring would close them.</summary>
internal static class UncoveredJoins
{
    /// <summary>A warning for each join that is worse covered than it was planned to be.</summary>
    internal static IEnumerable<Diagnostic> Of(
        PartOffsets asked,
        Plan plan,
        ExpectedFit expected,
        ImmutableArray<MeasurablePlace> places,
        ImmutableArray<Sighting> seen,
        ImmutableArray<JoinChange> joins
    )
    {
        var open = joins.Where(j => j.Uncovers).ToList();
        if (open.Count == 0)
            return [];
        ImmutableArray<Sighting> holes = [.. seen.Where(s => s.ShowsBothWays)];
        var more = places
            .Where(p => p.Across is null && holes.All(s => s.At != p.At))
            .Select(p => (p.Name, With: expected.With([.. holes.Select(s => s.Taken), new(p.At, p.Donor)])))
            .ToList();
        return open.Select(join =>
        {
            var (best, then) = more.Select(m => (m.Name, Join: Of(m.With, join.Before)))
                .DefaultIfEmpty(("", join.After))
                .MinBy(m => m.Item2.Within95);
            return CorrectedTapeProblems.Uncovered(
                asked.Place,
                plan.Hoopings[join.Before.Earlier].Letter,
                plan.Hoopings[join.Before.Later].Letter,
                join,
                then.Within95 < join.After.Within95 ? (best, then) : null
            );
        });
    }

    /// <summary>What is not among the changes has come back to what was planned.</summary>
    private static PartJoin Of(ImmutableArray<JoinChange> changes, PartJoin planned) =>
        changes.FirstOrDefault(j => j.Before == planned)?.After ?? planned;
}
