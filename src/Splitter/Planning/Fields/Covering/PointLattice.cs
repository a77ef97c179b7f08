using System.Collections.Immutable;
using System.Numerics;
using Splitter.Geometry;

namespace Splitter.Planning.Fields.Covering;

/// <summary>
/// What every cover has to hold, of one lattice: its points on drawn ground, and some of what is outermost. For points
/// a field may be pushed right and down until its left and top edge each meet one of them, so that few places are to be
/// looked at and nothing is lost.
/// </summary>
internal sealed class PointLattice(CoverTask task, int pitch, DrawnGround ground, ImmutableArray<Box> outermost)
{
    /// <summary>Points of one lattice; finer ones of large drawings are passed over.</summary>
    private const int MostPoints = 1200;

    /// <summary>
    /// Boxes that must stay whole, and points at the drawing's own edges, that are added to a lattice.
    /// </summary>
    private const int MostExtra = 60;

    /// <summary>
    /// Added ones whose sides all lie nearer to each other than this share of the lattice's pitch count as one: what
    /// holds one of them holds the other but for few places, so that a second row would say little.
    /// </summary>
    private const double SameThing = 1 / 3.0;

    /// <summary>Which places of a field hold what; none of it where the lattice says nothing.</summary>
    private CoverTable? table;

    private ExactCover? search;

    /// <summary>How many fields a cover has at least.</summary>
    /// <param name="known">A cover of this size is known: bounds need not go higher.</param>
    /// <param name="mostWork">Entries of the table that may be looked at; 0 for no search.</param>
    internal int Bound(int known, long mostWork)
    {
        table ??= Table();
        var below = known - task.Fixed.Length;
        if (table.Rows == 0)
            return task.Fixed.Length;
        if (search?.Below != below)
            search = new(table, below);
        return task.Fixed.Length + search.Solve(mostWork).Bound;
    }

    private CoverTable Table()
    {
        var things = Things();
        if (things.Count > MostPoints)
            return new(0);
        var fixedGrounds = task.Fixed.Select(task.Template.Ground).ToList();
        things.RemoveAll(t => fixedGrounds.Exists(g => g.Contains(t)));
        return new(things.Count, [.. Largest(Held(things)).Select(Places)]);
    }

    /// <summary>For each place of a field which things it holds, a bit each.</summary>
    private IEnumerable<ulong[]> Held(List<Box> things)
    {
        foreach (var size in task.Turns.Select(task.GroundOf))
        foreach (var top in things.Select(t => t.Top).Distinct().Order())
        {
            var band = Enumerable
                .Range(0, things.Count)
                .Where(i => things[i].Top >= top && things[i].Bottom <= top + size.Height)
                .ToList();
            foreach (var left in band.Select(i => things[i].Left).Distinct().Order())
            {
                var mask = new ulong[(things.Count + 63) / 64];
                foreach (var i in band)
                    if (things[i].Left >= left && things[i].Right <= left + size.Width)
                        mask[i / 64] |= 1UL << (i % 64);
                yield return mask;
            }
        }
    }

    /// <summary>Those that are not part of another, which holds its first thing as well.</summary>
    private static List<ulong[]> Largest(IEnumerable<ulong[]> masks)
    {
        var kept = new List<ulong[]>();
        var holding = new Dictionary<int, List<ulong[]>>();
        foreach (var mask in masks.OrderByDescending(m => m.Sum(w => BitOperations.PopCount(w))))
        {
            var places = Places(mask);
            if (places.Count == 0 || (holding.TryGetValue(places[0], out var others) && others.Exists(IsWithin)))
                continue;
            kept.Add(mask);
            foreach (var place in places)
                (holding.TryGetValue(place, out var list) ? list : holding[place] = []).Add(mask);

            bool IsWithin(ulong[] other)
            {
                for (var i = 0; i < mask.Length; i++)
                    if ((mask[i] & ~other[i]) != 0)
                        return false;
                return true;
            }
        }
        return kept;
    }

    private static List<int> Places(ulong[] mask)
    {
        var places = new List<int>();
        for (var i = 0; i < mask.Length; i++)
        for (var bits = mask[i]; bits != 0; bits &= bits - 1)
            places.Add((i * 64) + BitOperations.TrailingZeroCount(bits));
        return places;
    }

    /// <summary>Lattice points on drawn ground, and some of what is outermost.</summary>
    private List<Box> Things()
    {
        var box = task.Bounds;
        var things = new List<Box>();
        foreach (var y in Lines(box.Top, box.Bottom))
        foreach (var x in Lines(box.Left, box.Right))
            if (ground.Holds(new(x, y)))
                things.Add(Roomy(new(x, y, x, y)));
        var added = new List<Box>();
        foreach (var e in outermost)
        {
            if (added.Count == MostExtra)
                break;
            if (!added.Exists(a => Near(a, e, (int)(pitch * SameThing))))
                added.Add(e);
        }
        things.AddRange(added);
        return things;

        // Where a shape goes on all around, it is cut at the field's edge, and the seam needs room there.
        Box Roomy(Box point) => task.Around(point) is var around && ground.HoldsDeep(around) ? around : point;
    }

    private static bool Near(Box a, Box b, int distance) =>
        Math.Abs(a.Left - b.Left) < distance
        && Math.Abs(a.Right - b.Right) < distance
        && Math.Abs(a.Top - b.Top) < distance
        && Math.Abs(a.Bottom - b.Bottom) < distance;

    private ImmutableArray<int> Lines(int from, int to)
    {
        var steps = (to - from) / pitch;
        return steps == 0
            ? [from + ((to - from) / 2)]
            : [.. Enumerable.Range(0, steps + 1).Select(i => from + (int)((long)(to - from) * i / steps))];
    }
}
