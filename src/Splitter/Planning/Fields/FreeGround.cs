using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Fields;

/// <summary>What hoops that keep clear of forbidden zones can sew.</summary>
internal sealed class FreeGround
{
    /// <summary>Where centres of fields may lie, and the ground around a centre.</summary>
    private readonly ImmutableArray<(Box Centres, Box Ground)> places;

    private FreeGround(ImmutableArray<(Box Centres, Box Ground)> places)
    {
        this.places = places;
        Ground = Polygons.Union(places.Select(p => Region.Of(Swept(p.Centres, p.Ground))));
    }

    /// <summary>All that some field can sew.</summary>
    internal Region Ground { get; }

    /// <param name="over">Fields that cannot sew anything of this are not looked at.</param>
    internal static FreeGround Of(FieldTemplate template, ImmutableArray<Box> zones, Box over)
    {
        var found = ImmutableArray.CreateBuilder<(Box, Box)>();
        foreach (var turn in template.Turns)
        {
            var field = template.At(default, turn);
            var (hoop, ground) = (field.Bounds, template.Ground(field));
            var all = Swept(over, ground);
            // Edges may touch: centres that far from a zone are free.
            ImmutableArray<Box> closed = [.. zones.Select(zone => Swept(zone, hoop).Grown(-1))];
            var cuts = closed.SelectMany(b => new[] { b.Top, b.Bottom });
            int[] ys = [all.Top, .. cuts.Where(y => y > all.Top && y < all.Bottom).Distinct().Order(), all.Bottom];
            for (var i = 1; i < ys.Length; i++)
                foreach (var (from, to) in Gaps(closed.Where(b => b.Top < ys[i] && b.Bottom > ys[i - 1]), all))
                    found.Add((new(from, ys[i - 1], to, ys[i]), ground));
        }
        return new(found.ToImmutable());
    }

    /// <summary>One field can sew all of a box.</summary>
    internal bool Holds(Box box) =>
        places.Any(p =>
            new Box(
                box.Right - p.Ground.Right,
                box.Bottom - p.Ground.Bottom,
                box.Left - p.Ground.Left,
                box.Top - p.Ground.Top
            )
                is { IsEmpty: false } centres
            && centres.Meets(p.Centres)
        );

    /// <summary>A box moved to every point of another, the whole that it covers.</summary>
    private static Box Swept(Box along, Box box) =>
        new(along.Left + box.Left, along.Top + box.Top, along.Right + box.Right, along.Bottom + box.Bottom);

    /// <summary>What boxes leave free from left to right.</summary>
    private static IEnumerable<(int From, int To)> Gaps(IEnumerable<Box> closed, Box all)
    {
        var from = all.Left;
        foreach (var box in closed.OrderBy(b => b.Left))
        {
            if (box.Left > from)
                yield return (from, Math.Min(box.Left, all.Right));
            from = Math.Max(from, box.Right);
            if (from >= all.Right)
                yield break;
        }
        yield return (from, all.Right);
    }
}
