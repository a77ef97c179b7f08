using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Fields.Covering;

/// <summary>
/// A lower bound on the number of fields of a cover: whatever covers the drawing covers any number of its points, and
/// each box that must stay whole; with room for seams around them where the task has rules for neighbours. Points lie
/// in a lattice just too wide for one more of them to fit a field: then they count for more than their ground.
/// </summary>
internal sealed class PointBound
{
    /// <summary>
    /// How many lattice points side by side a field may hold: finer lattices bound no better and cost more.
    /// </summary>
    private const int MostAbreast = 4;

    /// <summary>Entries of the table that the exact search may look at for each lattice.</summary>
    internal const long MostWork = 60_000_000;

    private readonly CoverTask task;
    private readonly DrawnGround ground;
    private readonly ImmutableArray<Box> outermost;

    /// <summary>From wide to narrow: the first ones bound as well as others, and at once.</summary>
    private readonly ImmutableArray<PointLattice> lattices;

    internal PointBound(CoverTask task)
        : this(task, new(task.Drawn, task.Bounds), [.. Outermost(task)]) { }

    private PointBound(CoverTask task, DrawnGround ground, ImmutableArray<Box> outermost)
    {
        (this.task, this.ground, this.outermost) = (task, ground, outermost);
        var size = task.GroundOf(task.Turns[0]);
        lattices = task.Bounds.IsEmpty
            ? []
            :
            [
                .. from abreast in Enumerable.Range(1, MostAbreast)
                from length in new[] { size.Width, size.Height }.Distinct().Order()
                select new PointLattice(task, (length / abreast) + 1, ground, outermost),
            ];
    }

    /// <summary>The bound for the same drawing where nothing is asked of neighbours.</summary>
    internal PointBound WithoutRules() => new(task with { Rules = null }, ground, outermost);

    /// <param name="known">A cover of this size is known: bounds need not go higher.</param>
    /// <param name="mostWork">For each lattice; 0 for a first bound without a search.</param>
    /// <param name="jobs">How many threads may work.</param>
    internal int Of(int known, long mostWork = MostWork, int jobs = 1)
    {
        var bound = task.Bounds.IsEmpty ? task.Fixed.Length : Math.Max(1, task.Fixed.Length);
        // So many at a time as there are threads; none is looked at after one that bounds as high as can be.
        foreach (var some in lattices.Chunk(jobs))
        {
            if (bound >= known)
                break;
            bound = Math.Max(bound, InOrder.Select(some, jobs, lattice => lattice.Bound(known, mostWork)).Max());
        }
        return bound;
    }

    /// <summary>Boxes that must stay whole, and points where outlines are outermost.</summary>
    /// <returns>The outermost first: what lies inside is held by fields that are there for the edge.</returns>
    private static IEnumerable<Box> Outermost(CoverTask task) =>
        task
            .Wholes.Concat(
                task.Drawn.SelectMany(d => d.Rings).SelectMany(Extremes).Select(p => new Box(p.X, p.Y, p.X, p.Y))
            )
            .Distinct()
            .OrderBy(e => Depth(e, task.Bounds))
            .ThenBy(e => (e.Top, e.Left, e.Bottom, e.Right));

    private static IEnumerable<Point> Extremes(Ring ring)
    {
        var (left, right, top, bottom) = (ring.Points[0], ring.Points[0], ring.Points[0], ring.Points[0]);
        foreach (var p in ring.Points)
        {
            left = (p.X, p.Y).CompareTo((left.X, left.Y)) < 0 ? p : left;
            right = (p.X, p.Y).CompareTo((right.X, right.Y)) > 0 ? p : right;
            top = (p.Y, p.X).CompareTo((top.Y, top.X)) < 0 ? p : top;
            bottom = (p.Y, p.X).CompareTo((bottom.Y, bottom.X)) > 0 ? p : bottom;
        }
        return [left, right, top, bottom];
    }

    private static int Depth(Box box, Box all) =>
        Math.Min(
            Math.Min(box.Left - all.Left, all.Right - box.Right),
            Math.Min(box.Top - all.Top, all.Bottom - box.Bottom)
        );
}
