using System.Collections.Immutable;

namespace Splitter.Planning.Fields.Covering;

/// <summary>Which fields can hand corners on to which.</summary>
internal static class Links
{
    internal static bool Between(Field a, Field b, CoverTask task) =>
        task.Rules is not { } rules || CommonGround.HoldsTwo(task.Shared(a, b), rules);

    /// <summary>
    /// Groups of fields that reach each other, each in ascending order, the one with the first field first.
    /// </summary>
    internal static List<List<int>> Groups(IReadOnlyList<Field> fields, CoverTask task)
    {
        var groups = new List<List<int>>();
        var grouped = new bool[fields.Count];
        for (var first = 0; first < fields.Count; first++)
        {
            if (grouped[first])
                continue;
            grouped[first] = true;
            var group = new List<int> { first };
            for (var next = 0; next < group.Count; next++)
            for (var other = 0; other < fields.Count; other++)
            {
                if (grouped[other] || !Between(fields[group[next]], fields[other], task))
                    continue;
                grouped[other] = true;
                group.Add(other);
            }
            group.Sort();
            groups.Add(group);
        }
        return groups;
    }

    /// <summary>The candidates that one of these fields can hand corners on to, or take them from.</summary>
    internal static int[] Reach(ImmutableArray<Field> all, IReadOnlyCollection<int> group, CoverTask task) =>
        [
            .. Enumerable
                .Range(0, all.Length)
                .Where(i => !group.Contains(i) && group.Any(g => Between(all[i], all[g], task))),
        ];
}
