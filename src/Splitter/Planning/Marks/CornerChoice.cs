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

    /// <summary>
    /// A corner that lessens the misfit at the worst seam by a smaller share than this is not worth its tack, unless
    /// the recipe asks for it. Common practice, no source: nobody sees a twentieth of a misfit.
    /// </summary>
    internal const double Worth = 0.05;

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

    /// <summary>The best corners; null when there are no two at a useful distance.</summary>
    /// <param name="most">How many at most.</param>
    /// <param name="isAsked">
    /// So many are taken where there is room and none does harm; else only those that are worth it.
    /// </param>
    internal ChosenCorners? Best(
        ImmutableArray<CornerCandidate> candidates,
        Func<CornerCandidate, int, IEnumerable<CornerCandidate>> around,
        int most,
        bool isAsked
    )
    {
        var set = Start(candidates);
        if (set.Chosen.IsEmpty)
            return null;
        var best = set = Moved(set, candidates, around);
        var (lastGives, oneMoreGives) = ((double?)null, (double?)null);
        while (set.Chosen.Length < most)
        {
            set = Tried(set with { Cost = double.PositiveInfinity }, set.Chosen.Length, candidates);
            if (double.IsPositiveInfinity(set.Cost))
                break;
            set = Moved(set, candidates, around);
            var gives = 1 - (set.Worst / best.Worst);
            if (gives < (isAsked ? 0 : Worth))
            {
                oneMoreGives = gives;
                break;
            }
            (best, lastGives) = (set, gives);
        }
        Point[] places = [.. best.Chosen.Select(c => c.At)];
        var line = Longest(places);
        return new(
            best.Chosen,
            new(
                Units.Round(line.From.DistanceTo(line.To)),
                Units.Round(OffLine(places, line)),
                lastGives,
                oneMoreGives,
                OffLine([.. candidates.Select(c => c.At)], line) < arm
            )
        );
    }

    /// <param name="Cost">What sets are compared by.</param>
    /// <param name="Worst">Root mean square misfit at the worst seam, µm.</param>
    private readonly record struct Set(ImmutableArray<CornerCandidate> Chosen, double Cost, double Worst);

    /// <summary>Each corner exchanged for a better one as long as that helps, and at last moved about.</summary>
    private Set Moved(
        Set set,
        ImmutableArray<CornerCandidate> candidates,
        Func<CornerCandidate, int, IEnumerable<CornerCandidate>> around
    )
    {
        for (var round = 0; round < Rounds; round++)
        {
            var before = set.Cost;
            for (var slot = 0; slot < set.Chosen.Length; slot++)
                set = Tried(set, slot, candidates);
            if (set.Cost >= before)
                break;
        }
        foreach (var steps in (ReadOnlySpan<int>)[4, 2, 1])
            for (var slot = 0; slot < set.Chosen.Length; slot++)
                if (!set.Chosen[slot].IsThere)
                    set = Tried(set, slot, around(set.Chosen[slot], steps));
        return set;
    }

    /// <summary>The best two of those that are outermost in some direction.</summary>
    private Set Start(ImmutableArray<CornerCandidate> candidates)
    {
        var best = new Set([], double.PositiveInfinity, 0);
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
                    if (Judged([some[i], some[j]]) is var pair && pair.Cost < best.Cost)
                        best = pair;
                }
            if (!best.Chosen.IsEmpty)
                break;
        }
        return best;
    }

    /// <summary>The best of the sets that have another corner in one place, or one more after the last.</summary>
    private Set Tried(Set set, int slot, IEnumerable<CornerCandidate> others)
    {
        var best = set;
        var rest = slot < set.Chosen.Length ? set.Chosen.RemoveAt(slot) : set.Chosen;
        foreach (var other in others)
        {
            if (rest.Any(c => c.At.DistanceTo(other.At) < apart))
                continue;
            var chosen = rest.Insert(slot, other);
            if (
                CommonGround.IsApart([.. chosen.Select(c => c.At)])
                && Judged(chosen) is var found
                && found.Cost < best.Cost
            )
                best = found;
        }
        return best;
    }

    private Set Judged(ImmutableArray<CornerCandidate> chosen)
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
        worst = Math.Sqrt(worst);
        var inLine = 1 - Math.Min(1, OffLine(points, Longest(points)) / arm);
        var cost =
            worst
            + (OfOthers * Math.Sqrt(sum / seams.Length))
            + (OfPoor * chosen.Sum(c => c.Poor))
            + (OfNew * chosen.Count(c => !c.IsThere))
            + (OfLine * inLine);
        return new(chosen, cost, worst);
    }

    /// <summary>From one to the other of the two that lie farthest apart.</summary>
    private static (Point From, Point To) Longest(ReadOnlySpan<Point> points)
    {
        var (a, b) = (points[0], points[1]);
        for (var i = 0; i < points.Length; i++)
        for (var j = i + 1; j < points.Length; j++)
            if (points[i].DistanceTo(points[j]) > a.DistanceTo(b))
                (a, b) = (points[i], points[j]);
        return (a, b);
    }

    /// <summary>How far places lie from a line at most, µm.</summary>
    private static double OffLine(ReadOnlySpan<Point> points, (Point From, Point To) line)
    {
        var (dx, dy) = (line.To.X - (double)line.From.X, line.To.Y - (double)line.From.Y);
        var most = 0.0;
        foreach (var p in points)
            most = Math.Max(most, Math.Abs((dx * (p.Y - (double)line.From.Y)) - (dy * (p.X - (double)line.From.X))));
        return most / line.From.DistanceTo(line.To);
    }
}
