using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning.Fit;

namespace Splitter.Planning.Marks;

/// <summary>
/// Chooses the corners of one hooping so that it meets others best: from the outermost places the best few, then each
/// exchanged for a better place anywhere, and at last moved about. A few hundred sets are tried, whatever the ground.
/// </summary>
internal sealed class CornerChoice
{
    /// <summary>
    /// A misfit at the worst seam may grow by this, µm, to get one more millimetre of a corner's arms off sewn
    /// stitching (it is loose and must come out again without harm), or to make an arm that much longer.
    /// </summary>
    private const double OfPoor = 3;

    /// <summary>The same, µm, to make do with a corner that is sewn anyway.</summary>
    private const double OfNew = 2;

    /// <summary>
    /// The same, µm, for a third corner that stands an arm's length out of line with two others: by corners in a line a
    /// person sees a shift across it, but no stretch.
    /// </summary>
    private const double OfLine = 15;

    /// <summary>How much the other seams count beside the worst.</summary>
    private const double OfOthers = 0.25;

    /// <summary>Times that each corner is looked at again: the second time little changes.</summary>
    private const int Rounds = 3;

    private readonly Poses poses;
    private readonly ImmutableArray<SeamPlace> seams;
    private readonly int arm;
    private readonly double apart;

    /// <summary>A place where the hooping meets another.</summary>
    /// <param name="Other">An earlier hooping, or null for a later one, of which no more is known.</param>
    internal readonly record struct SeamPlace(Point At, int? Other);

    /// <param name="poses">Of all earlier hoopings.</param>
    /// <param name="apart">Corners nearer to each other could be confused, µm.</param>
    internal CornerChoice(Poses poses, ImmutableArray<SeamPlace> seams, int arm, double apart)
    {
        this.poses = poses;
        this.seams = seams;
        this.arm = arm;
        this.apart = apart;
    }

    /// <summary>The best corners, or none when there are no two at a useful distance.</summary>
    /// <param name="most">How many at most: fewer where one more sets the hooping no better.</param>
    internal ImmutableArray<CornerCandidate> Best(
        ImmutableArray<CornerCandidate> candidates,
        Func<CornerCandidate, int, IEnumerable<CornerCandidate>> around,
        int most
    )
    {
        var set = Start(candidates);
        if (set.Chosen.IsEmpty)
            return [];
        var best = set = Moved(set, candidates, around);
        while (set.Chosen.Length < most)
        {
            set = Tried(set.Chosen, cost: double.PositiveInfinity, set.Chosen.Length, candidates);
            if (double.IsPositiveInfinity(set.Cost))
                break;
            set = Moved(set, candidates, around);
            if (set.Cost < best.Cost)
                best = set;
        }
        return best.Chosen;
    }

    /// <summary>Each corner exchanged for a better one as long as that helps, and at last moved about.</summary>
    private (ImmutableArray<CornerCandidate> Chosen, double Cost) Moved(
        (ImmutableArray<CornerCandidate> Chosen, double Cost) set,
        ImmutableArray<CornerCandidate> candidates,
        Func<CornerCandidate, int, IEnumerable<CornerCandidate>> around
    )
    {
        var (chosen, cost) = set;
        for (var round = 0; round < Rounds; round++)
        {
            var before = cost;
            for (var slot = 0; slot < chosen.Length; slot++)
                (chosen, cost) = Tried(chosen, cost, slot, candidates);
            if (cost >= before)
                break;
        }
        foreach (var steps in (ReadOnlySpan<int>)[4, 2, 1])
            for (var slot = 0; slot < chosen.Length; slot++)
                if (!chosen[slot].IsThere)
                    (chosen, cost) = Tried(chosen, cost, slot, around(chosen[slot], steps));
        return (chosen, cost);
    }

    /// <summary>The best two of those that are outermost in some direction.</summary>
    private (ImmutableArray<CornerCandidate> Chosen, double Cost) Start(ImmutableArray<CornerCandidate> candidates)
    {
        (ImmutableArray<CornerCandidate> Chosen, double Cost) best = ([], double.PositiveInfinity);
        var outer = candidates
            .GroupBy(c => c.Donor)
            .OrderBy(g => g.Key)
            .SelectMany(g =>
                from d in new (int X, int Y)[] { (1, 1), (1, -1), (-1, 1), (-1, -1) }
                select g.MaxBy(c => ((long)c.At.X * d.X) + ((long)c.At.Y * d.Y))
            )
            .Distinct()
            .ToList();
        // Where those lie too near to each other, any two will do that do not.
        foreach (var some in (ReadOnlySpan<IReadOnlyList<CornerCandidate>>)[outer, candidates])
        {
            for (var i = 0; i < some.Count; i++)
            for (var j = i + 1; j < some.Count; j++)
                if (some[i].At.DistanceTo(some[j].At) >= CommonGround.ShortestBase)
                {
                    ImmutableArray<CornerCandidate> pair = [some[i], some[j]];
                    if (Cost(pair) is var cost && cost < best.Cost)
                        best = (pair, cost);
                }
            if (!best.Chosen.IsEmpty)
                break;
        }
        return best;
    }

    /// <summary>The best of the sets that have another corner in one place, or one more after the last.</summary>
    private (ImmutableArray<CornerCandidate> Chosen, double Cost) Tried(
        ImmutableArray<CornerCandidate> chosen,
        double cost,
        int slot,
        IEnumerable<CornerCandidate> others
    )
    {
        var best = (Chosen: chosen, Cost: cost);
        var rest = slot < chosen.Length ? chosen.RemoveAt(slot) : chosen;
        foreach (var other in others)
        {
            if (rest.Any(c => c.At.DistanceTo(other.At) < apart))
                continue;
            var set = rest.Insert(slot, other);
            if (CommonGround.IsApart([.. set.Select(c => c.At)]) && Cost(set) is var found && found < best.Cost)
                best = (set, found);
        }
        return best;
    }

    private double Cost(ImmutableArray<CornerCandidate> chosen)
    {
        var place = poses.Count;
        var points = chosen.Select(c => c.At).ToArray();
        poses.Add([.. chosen.Select(c => new TakenCorner(c.At, c.Donor))]);
        var (worst, sum) = (0.0, 0.0);
        foreach (var seam in seams)
        {
            var misfit = seam.Other is { } other
                ? poses.Variance(place, other, seam.At)
                : CornerFit.Variance(points, poses.Accuracy, seam.At);
            (worst, sum) = (Math.Max(worst, misfit), sum + misfit);
        }
        poses.Keep(place);
        return Math.Sqrt(worst)
            + (OfOthers * Math.Sqrt(sum / seams.Length))
            + (OfPoor * chosen.Sum(c => c.Poor))
            + (OfNew * chosen.Count(c => !c.IsThere))
            + (OfLine * (1 - Math.Min(1, OutOfLine(points) / arm)));
    }

    /// <summary>How far the corners lie at most from the line through the two that are farthest apart, µm.</summary>
    private static double OutOfLine(Point[] points)
    {
        var (a, b) = (points[0], points[1]);
        for (var i = 0; i < points.Length; i++)
        for (var j = i + 1; j < points.Length; j++)
            if (points[i].DistanceTo(points[j]) > a.DistanceTo(b))
                (a, b) = (points[i], points[j]);
        var (dx, dy) = (b.X - (double)a.X, b.Y - (double)a.Y);
        return points.Max(p => Math.Abs((dx * (p.Y - (double)a.Y)) - (dy * (p.X - (double)a.X)))) / a.DistanceTo(b);
    }
}
