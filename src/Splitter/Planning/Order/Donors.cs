using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Planning.Order;

/// <summary>Which fields each may take corners from.</summary>
internal static class Donors
{
    /// <summary>
    /// Donors are sought among this many neighbours, those with the most common ground: further ones only touch a
    /// corner of the field.
    /// </summary>
    private const int MostNeighbours = 6;

    /// <summary>
    /// For each field its nearest neighbours. Where fields lie close in rows these are all of its own row: one more
    /// leads back to the first field, so that every field that can be reached is.
    /// </summary>
    /// <param name="common">The ground that two fields share.</param>
    internal static ImmutableArray<ImmutableArray<int>> Of(
        int count,
        int first,
        Func<int, int, Box> common,
        RegistrationRules rules
    )
    {
        var back = WaysBack(count, first, common, rules);
        return
        [
            .. Enumerable
                .Range(0, count)
                .Select(f =>
                    Enumerable
                        .Range(0, count)
                        .Where(g => g != f && CommonGround.HoldsOne(common(f, g), rules))
                        .OrderByDescending(g => Area(common(f, g)))
                        .ThenBy(g => g)
                        .Take(MostNeighbours)
                        .Union(back[f] is { } donor ? [donor] : [])
                        .Order()
                        .ToImmutableArray()
                ),
        ];
    }

    /// <summary>
    /// For each field the one that it is reached through from the first, by as much ground as may be (Prim 1957).
    /// </summary>
    private static int?[] WaysBack(int count, int first, Func<int, int, Box> common, RegistrationRules rules)
    {
        var (back, most) = (new int?[count], new long[count]);
        var open = Enumerable.Range(0, count).Where(f => f != first).ToList();
        for (int? next = first; next is { } donor; next = Nearest())
        {
            open.Remove(donor);
            foreach (var f in open)
                if (common(f, donor) is var box && CommonGround.HoldsTwo(box, rules) && Area(box) > most[f])
                    (back[f], most[f]) = (donor, Area(box));
        }
        return back;

        int? Nearest() => open.Where(f => most[f] > 0).Cast<int?>().MaxBy(f => most[f!.Value]);
    }

    private static long Area(Box box) => (long)box.Width * box.Height;
}
