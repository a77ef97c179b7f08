using System.Collections.Immutable;
using System.Numerics;
using Splitter.Geometry;

namespace Splitter.Planning.Fields.Covering;

/// <summary>
/// A lower bound on the number of fields of a cover: whatever covers the drawing covers any number of its points, and
/// each box that must stay whole; with room for seams around them where the task has rules for neighbours. For points a
/// field may be pushed right and down until its left and top edge each meet one of them, so that few places are to be
/// looked at and nothing is lost. Points lie in a lattice just too wide for one more of them to fit a field: then they
/// count for more than their ground.
/// </summary>
internal static class PointBound
{
    /// <summary>
    /// How many lattice points side by side a field may hold: finer lattices bound no better and cost more.
    /// </summary>
    private const int MostAbreast = 4;

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

    /// <summary>Entries of the table that the exact search may look at for each lattice.</summary>
    internal const long MostWork = 60_000_000;

    /// <param name="known">A cover of this size is known: bounds need not go higher.</param>
    /// <param name="mostWork">For each lattice; 0 for a first bound without a search.</param>
    internal static int Of(CoverTask task, int known, long mostWork = MostWork)
    {
        if (task.Bounds.IsEmpty)
            return task.Fixed.Length;
        var size = task.GroundOf(task.Turns[0]);
        int[] lengths = [.. new[] { size.Width, size.Height }.Distinct().Order()];
        var ground = new DrawnGround(task.Drawn, task.Bounds);
        ImmutableArray<Box> outermost = [.. Outermost(task)];
        var bound = Math.Max(1, task.Fixed.Length);
        for (var abreast = 1; abreast <= MostAbreast; abreast++)
            foreach (var length in lengths)
            {
                if (bound >= known)
                    return bound;
                var boxes = Things(task, (length / abreast) + 1, ground, outermost);
                if (boxes.Count <= MostPoints)
                    bound = Math.Max(bound, Of(task, boxes, known, mostWork));
            }
        return bound;
    }

    private static int Of(CoverTask task, List<Box> things, int known, long mostWork)
    {
        var grounds = task.Fixed.Select(task.Template.Ground).ToList();
        things.RemoveAll(t => grounds.Exists(g => g.Contains(t)));
        if (things.Count == 0)
            return grounds.Count;
        var masks = new List<ulong[]>();
        var words = (things.Count + 63) / 64;
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var size in task.Turns.Select(task.GroundOf))
        foreach (var top in things.Select(t => t.Top).Distinct().Order())
        {
            var band = Enumerable
                .Range(0, things.Count)
                .Where(i => things[i].Top >= top && things[i].Bottom <= top + size.Height)
                .ToList();
            foreach (var left in band.Select(i => things[i].Left).Distinct().Order())
            {
                var mask = new ulong[words];
                foreach (var i in band)
                    if (things[i].Left >= left && things[i].Right <= left + size.Width)
                        mask[i / 64] |= 1UL << (i % 64);
                if (seen.Add(string.Join(' ', mask)))
                    masks.Add(mask);
            }
        }
        var largest = Largest(masks);
        var table = new CoverTable(largest.Count);
        for (var i = 0; i < things.Count; i++)
            table.Add([.. Enumerable.Range(0, largest.Count).Where(m => (largest[m][i / 64] >> (i % 64) & 1) != 0)]);
        return grounds.Count + ExactCover.Solve(table, known - grounds.Count, mostWork).Bound;
    }

    /// <summary>Those that are not part of another.</summary>
    private static List<ulong[]> Largest(List<ulong[]> masks)
    {
        var kept = new List<ulong[]>();
        foreach (var mask in masks.OrderByDescending(m => m.Sum(w => BitOperations.PopCount(w))))
            if (!kept.Exists(k => Within(mask, k)))
                kept.Add(mask);
        return kept;
    }

    private static bool Within(ulong[] mask, ulong[] other)
    {
        for (var i = 0; i < mask.Length; i++)
            if ((mask[i] & ~other[i]) != 0)
                return false;
        return true;
    }

    /// <summary>Boxes that must stay whole, and points where outlines are outermost.</summary>
    /// <returns>The outermost first: what lies inside is held by fields that are there for the edge.</returns>
    private static IEnumerable<Box> Outermost(CoverTask task) =>
        task
            .Wholes.Concat(
                task.Drawn.SelectMany(d => d.Rings)
                    .SelectMany(ring =>
                        new[]
                        {
                            ring.Points.MinBy(p => (p.X, p.Y)),
                            ring.Points.MaxBy(p => (p.X, p.Y)),
                            ring.Points.MinBy(p => (p.Y, p.X)),
                            ring.Points.MaxBy(p => (p.Y, p.X)),
                        }
                    )
                    .Select(p => new Box(p.X, p.Y, p.X, p.Y))
            )
            .Distinct()
            .OrderBy(e => Depth(e, task.Bounds))
            .ThenBy(e => (e.Top, e.Left, e.Bottom, e.Right));

    /// <summary>Lattice points on drawn ground, and some of what is outermost.</summary>
    private static List<Box> Things(CoverTask task, int pitch, DrawnGround ground, ImmutableArray<Box> outermost)
    {
        var box = task.Bounds;
        var things = new List<Box>();
        foreach (var y in Lattice(box.Top, box.Bottom, pitch))
        foreach (var x in Lattice(box.Left, box.Right, pitch))
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

    private static int Depth(Box box, Box all) =>
        Math.Min(
            Math.Min(box.Left - all.Left, all.Right - box.Right),
            Math.Min(box.Top - all.Top, all.Bottom - box.Bottom)
        );

    private static bool Near(Box a, Box b, int distance) =>
        Math.Abs(a.Left - b.Left) < distance
        && Math.Abs(a.Right - b.Right) < distance
        && Math.Abs(a.Top - b.Top) < distance
        && Math.Abs(a.Bottom - b.Bottom) < distance;

    private static ImmutableArray<int> Lattice(int from, int to, int pitch)
    {
        var steps = (to - from) / pitch;
        return steps == 0
            ? [from + ((to - from) / 2)]
            : [.. Enumerable.Range(0, steps + 1).Select(i => from + (int)((long)(to - from) * i / steps))];
    }
}
