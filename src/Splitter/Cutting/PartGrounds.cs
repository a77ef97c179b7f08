using System.Collections.Concurrent;
using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;

namespace Splitter.Cutting;

/// <summary>
/// The ground that each hooping has for itself, and how far its neighbours sew into it. Two parts that only come near
/// each other where a third one meets both reach over each other there too: else a hole opens between the corners of
/// four.
/// </summary>
internal sealed class PartGrounds
{
    /// <summary>
    /// Parts without a join reach over each other no further than this from those that meet both, in reaches: as far as
    /// the seam between them can be long where a crowd was parted.
    /// </summary>
    private const int Near = 6;

    /// <summary>Offsets stray by up to 10 µm; no thread is that fine.</summary>
    private const double Seal = 20;

    private readonly Plan plan;
    private readonly ConcurrentDictionary<(PartReach Reach, double Share), Region> past = [];
    private readonly ConcurrentDictionary<(int Part, double By), Region> grown = [];

    internal PartGrounds(Plan plan)
        : this(plan, [.. plan.Hoopings.Select(h => h.Territory)], Measured(plan)) { }

    private PartGrounds(Plan plan, ImmutableArray<Region> territories, ImmutableArray<PartReach> reaches) =>
        (this.plan, Territories, Reaches) = (plan, territories, reaches);

    /// <summary>By hooping; they do not overlap.</summary>
    internal ImmutableArray<Region> Territories { get; }

    /// <summary>They are not the plan's any more.</summary>
    internal bool AreParted { get; private init; }

    /// <summary>Every part with every other one that it reaches over, by both.</summary>
    internal ImmutableArray<PartReach> Reaches { get; }

    /// <summary>The same parts and reaches on other territories.</summary>
    internal PartGrounds On(ImmutableArray<Region> territories)
    {
        var moved = new PartGrounds(plan, territories, Reaches) { AreParted = true };
        // Most territories stay as they are, and what is known of them stays known.
        foreach (var (of, region) in grown)
            if (IsSame(of.Part))
                moved.grown[of] = region;
        foreach (var (of, region) in past)
            if (IsSame(of.Reach.Part) && IsSame(of.Reach.Over) && of.Reach.Between.All(IsSame))
                moved.past[of] = region;
        return moved;

        bool IsSame(int part) => ReferenceEquals(territories[part], Territories[part]);
    }

    /// <summary>What the field of a hooping can sew.</summary>
    internal Box FieldOf(int part) => plan.Hoopings[part].Ground;

    /// <summary>
    /// The strip of a neighbour's territory along the seam, as far as the part's field can sew: all of the reach, or a
    /// share of it.
    /// </summary>
    internal Region Past(PartReach reach, double share = 1) =>
        past.GetOrAdd((reach, share), _ => Strip(reach, reach.By * share, Territories[reach.Over]));

    /// <summary>
    /// The same and a little of what lies beside it: roundings must not part it from the part's own ground.
    /// </summary>
    internal Region RowsPast(PartReach reach, double share = 1) =>
        Past(reach, share).IsEmpty ? Region.Empty : Strip(reach, reach.By * share, Grown(reach.Over, Seal));

    private Region Strip(PartReach reach, double by, Region over)
    {
        // No mitre is longer than that.
        if (!Territories[reach.Part].Bounds.Grown(4 * reach.By).Meets(over.Bounds))
            return Region.Empty;
        var strip = Polygons.Intersect(Polygons.Intersect(Grown(reach.Part, by), over), Region.Of(FieldOf(reach.Part)));
        return reach.Between.IsEmpty || strip.IsEmpty
            ? strip
            : Polygons.Intersect(strip, Polygons.Union(reach.Between.Select(part => Grown(part, Near * reach.By))));
    }

    private Region Grown(int part, double by) =>
        grown.GetOrAdd((part, by), _ => Polygons.Offset(Territories[part], by, Join.Mitre));

    private static ImmutableArray<PartReach> Measured(Plan plan)
    {
        var joins = plan.Joins.ToDictionary(j => (j.Earlier, j.Later), j => j.Overlap);
        var found = ImmutableArray.CreateBuilder<PartReach>();
        for (var one = 0; one < plan.Hoopings.Length; one++)
        for (var other = 0; other < plan.Hoopings.Length; other++)
            if (one == other)
                continue;
            else if (Of(one, other) is { } overlap)
                found.Add(new(one, other, overlap, []));
            else if (
                Enumerable
                    .Range(0, plan.Hoopings.Length)
                    .Where(third => Of(one, third) is not null && Of(third, other) is not null)
                    .ToImmutableArray() is
                { IsEmpty: false } between
            )
                found.Add(
                    new(
                        one,
                        other,
                        between.Max(third => Math.Max(Of(one, third)!.Value, Of(third, other)!.Value)),
                        between
                    )
                );
        return found.ToImmutable();

        int? Of(int a, int b) => joins.TryGetValue((Math.Min(a, b), Math.Max(a, b)), out var overlap) ? overlap : null;
    }
}

/// <summary>How far a part reaches over the territory of another one.</summary>
/// <param name="By">At most, µm.</param>
/// <param name="Between">Parts that both meet, where they do not meet each other; none where they have a join.</param>
internal readonly record struct PartReach(int Part, int Over, int By, ImmutableArray<int> Between);
