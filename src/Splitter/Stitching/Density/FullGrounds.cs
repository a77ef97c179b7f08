using System.Collections.Immutable;

namespace Splitter.Stitching.Density;

/// <summary>Finds squares with too many layers or needle holes that belong together.</summary>
internal static class FullGrounds
{
    /// <summary>
    /// Squares with more layers or holes than these, those together that touch or lie over each other; in the order of
    /// rows.
    /// </summary>
    /// <param name="asked">Among those with one of these quarters; null for all.</param>
    internal static IEnumerable<ImmutableArray<Square>> Of(
        ThreadGrid grid,
        double layers,
        int holes,
        HashSet<Quarter>? asked = null
    )
    {
        ImmutableArray<Square> full =
        [
            .. grid.Fuller(layers, holes).Where(s => asked is null || s.Quarters.Any(asked.Contains)),
        ];
        var left = full.ToHashSet();
        foreach (var square in full)
        {
            if (!left.Remove(square))
                continue;
            var ground = ImmutableArray.CreateBuilder<Square>();
            ground.Add(square);
            for (var i = 0; i < ground.Count; i++)
                ground.AddRange(ground[i].Around.Where(left.Remove));
            yield return ground.ToImmutable();
        }
    }
}
