using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning.Fit;
using Splitter.Planning.Seams;
using Splitter.Recipes;

namespace Splitter.Planning.Order;

/// <summary>
/// What an order is judged by: which fields can hand corners to which, where those would lie at best, and where fields
/// meet. Where corners really find room is not known before seams are.
/// </summary>
internal sealed class OrderTask
{
    /// <summary>A hooping is set by this many others at most: three corners can come from no more.</summary>
    internal const int MostDonors = 3;

    private readonly ImmutableArray<Box> commons;
    private readonly Dictionary<(int Field, int A, int B, int C), ImmutableArray<(Point At, int Donor)>> ideals = [];
    private readonly ImmutableArray<ImmutableArray<Point>> meetings;
    private readonly ImmutableArray<Point>[] own;

    internal OrderTask(Recipe recipe, Layout layout, ImmutableArray<Crossing> crossings, int first)
    {
        Rules = recipe.Registration;
        Stretch = recipe.Cloth.Stretch;
        Layout = layout;
        First = first;
        Count = layout.Fields.Length;
        commons =
        [
            .. from a in Enumerable.Range(0, Count)
            from b in Enumerable.Range(0, Count)
            select CommonGround.Of(recipe, layout.Fields[a], layout.Fields[b]),
        ];
        var met = crossings
            .GroupBy(c => (Math.Min(c.Earlier, c.Later), Math.Max(c.Earlier, c.Later)))
            .ToDictionary(g => g.Key, g => Extremes.Of(g.SelectMany(c => c.Line.Points)));
        meetings =
        [
            .. from a in Enumerable.Range(0, Count)
            from b in Enumerable.Range(0, Count)
            select met.GetValueOrDefault((Math.Min(a, b), Math.Max(a, b)), []),
        ];
        own =
        [
            .. Enumerable
                .Range(0, Count)
                .Select(f =>
                    Enumerable.Range(0, Count).SelectMany(o => Meeting(f, o)).Distinct().Order().ToImmutableArray()
                )
                .Select((points, f) => points.IsEmpty ? Extremes.Of(layout.Grounds[f]) : points),
        ];
        Neighbours = Donors.Of(Count, first, Common, Rules);
    }

    internal RegistrationRules Rules { get; }

    internal Stretch Stretch { get; }

    internal Layout Layout { get; }

    /// <summary>How many fields there are.</summary>
    internal int Count { get; }

    /// <summary>The field that is sewn first.</summary>
    internal int First { get; }

    /// <summary>For each field those that it may take corners from.</summary>
    internal ImmutableArray<ImmutableArray<int>> Neighbours { get; }

    internal Box Common(int a, int b) => commons[(a * Count) + b];

    /// <summary>Where two fields meet; nowhere when no seam between them cuts anything.</summary>
    internal ImmutableArray<Point> Meeting(int a, int b) => meetings[(a * Count) + b];

    /// <summary>What a field adds to a score depends on the other one: on its corners, or how they meet.</summary>
    internal bool IsNear(int field, int other) => Neighbours[field].Contains(other) || !Meeting(field, other).IsEmpty;

    /// <summary>Where a field meets others, or else the corners of its ground.</summary>
    internal ImmutableArray<Point> Edge(int field) => own[field];

    internal ImmutableArray<Point> Ground(int field) => Extremes.Of(Layout.Grounds[field]);

    /// <summary>
    /// Every way to choose a field's donors among sewn ones for which there is room, in a fixed order.
    /// </summary>
    internal IEnumerable<ImmutableArray<int>> DonorSets(int field, Func<int, bool> isSewn)
    {
        var near = Neighbours[field].Where(isSewn).ToList();
        for (var i = 0; i < near.Count; i++)
        {
            if (Works([near[i]]))
                yield return [near[i]];
            for (var j = i + 1; j < near.Count; j++)
            {
                if (Works([near[i], near[j]]))
                    yield return [near[i], near[j]];
                for (var k = j + 1; k < near.Count && Rules.CornerCount >= MostDonors; k++)
                    if (Works([near[i], near[j], near[k]]))
                        yield return [near[i], near[j], near[k]];
            }
        }

        bool Works(ImmutableArray<int> donors) => !Ideal(field, donors).IsEmpty;
    }

    /// <summary>
    /// Corners in the extremes of the ground that a field shares with its donors, such that it is set best where it
    /// meets others; each donor gives one at least. None when there is no room for two at a useful distance.
    /// </summary>
    /// <param name="donors">Ascending.</param>
    internal ImmutableArray<(Point At, int Donor)> Ideal(int field, ImmutableArray<int> donors)
    {
        var key = (field, donors[0], donors.Length > 1 ? donors[1] : -1, donors.Length > 2 ? donors[2] : -1);
        if (!ideals.TryGetValue(key, out var found))
            ideals[key] = found = Best(field, donors);
        return found;
    }

    private ImmutableArray<(Point At, int Donor)> Best(int field, ImmutableArray<int> donors)
    {
        if (
            donors.Any(d => !CommonGround.HoldsOne(Common(field, d), Rules))
            || (donors.Length == 1 && !CommonGround.HoldsTwo(Common(field, donors[0]), Rules))
        )
            return [];
        var all = donors
            .SelectMany(d =>
                Extremes.Of(Common(field, d).Grown(-CommonGround.CornerMargin)).Select(p => (At: p, Donor: d))
            )
            .ToList();
        var best = (Variance: double.PositiveInfinity, Chosen: ImmutableArray<(Point, int)>.Empty);
        foreach (var chosen in Subsets(all, Math.Min(Rules.CornerCount, MostDonors)))
        {
            if (
                donors.Any(d => !chosen.Exists(c => c.Donor == d))
                || !CommonGround.IsApart([.. chosen.Select(c => c.At)])
            )
                continue;
            var points = chosen.Select(c => c.At).ToArray();
            var worst = Edge(field).Max(p => CornerFit.Variance(points, 1, p));
            if (worst < best.Variance)
                best = (worst, [.. chosen]);
        }
        return best.Chosen;
    }

    private static IEnumerable<List<(Point At, int Donor)>> Subsets(
        List<(Point At, int Donor)> all,
        int size,
        int from = 0
    )
    {
        if (size == 0)
        {
            yield return [];
            yield break;
        }
        for (var i = from; i < all.Count; i++)
            foreach (var rest in Subsets(all, size - 1, i + 1))
                yield return [all[i], .. rest];
    }
}
