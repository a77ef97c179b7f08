using Splitter.Geometry;

namespace Splitter.Artwork.Columns;

/// <summary>
/// Joins branches that go straight on over a joint to one column, as the bar of a T. At each joint one column runs
/// through at most, at a star's none; the others end on it, so that thread does not pile up where many meet.
/// </summary>
internal sealed class ColumnJoining(InnerTriangles ground)
{
    /// <summary>Branches that turn by more than this do not make one column, radians (45 degrees).</summary>
    private const double LargestTurn = 45 * Math.PI / 180;

    /// <summary>
    /// Branches of a curve, seen from where a joint begins and ends, turn by up to this, radians (110 degrees): a ring
    /// runs on past a stem that meets it.
    /// </summary>
    private const double LargestCurve = 110 * Math.PI / 180;

    /// <summary>An outline that nowhere turns by this is a curve, radians (30 degrees).</summary>
    private const double CurveCorner = 30 * Math.PI / 180;

    /// <summary>One width aside counts as much as this turn, radians (30 degrees).</summary>
    private const double AsideAsTurn = 30 * Math.PI / 180;

    /// <summary>Scores nearer than this are equal, radians: place decides then, not the last bit of a sum.</summary>
    private const double SameScore = 1e-6;

    /// <summary>A chain of branches, each walked so that it leads on to the next.</summary>
    internal sealed record Run(List<Branch> Branches, bool Closed);

    /// <summary>One end of a branch; a branch that is walked out of over this end.</summary>
    private sealed record End(int Branch, bool AtStart, Branch Outwards);

    internal List<Run> Join(List<Branch> branches)
    {
        var ends = branches
            .SelectMany((b, i) => new[] { new End(i, true, b.Reversed()), new End(i, false, b) })
            .Where(e => e.Outwards.EndJoint != Branch.Free)
            .ToList();
        var partner = new Dictionary<(int, bool), (int Branch, bool AtStart)>();
        var pairs =
            from joint in ends.GroupBy(e => e.Outwards.EndJoint)
            where joint.Count() < Sectors.FewestArms
            from a in joint
            from b in joint
            where (a.Branch, a.AtStart).CompareTo((b.Branch, b.AtStart)) < 0
            let score = Score(a.Outwards, b.Outwards)
            where score < LargestTurn || (score < LargestCurve && IsCurve(a.Outwards, b.Outwards))
            orderby Math.Round(score / SameScore), a.Outwards.Last.Middle, b.Outwards.Last.Middle
            select (a, b);
        foreach (var (a, b) in pairs.DistinctBy(p => p.a.Outwards.EndJoint))
        {
            var (keyA, keyB) = ((a.Branch, a.AtStart), (b.Branch, b.AtStart));
            (partner[keyA], partner[keyB]) = (keyB, keyA);
        }
        return Chains(branches, partner);
    }

    private static List<Run> Chains(List<Branch> branches, Dictionary<(int, bool), (int Branch, bool AtStart)> partner)
    {
        var (runs, used) = (new List<Run>(), new bool[branches.Count]);
        for (var i = 0; i < branches.Count; i++)
        {
            if (used[i])
                continue;
            // Back to where the chain begins, or round to here.
            var (at, start) = (i, true);
            while (partner.TryGetValue((at, start), out var back) && back != (i, false))
                (at, start) = (back.Branch, !back.AtStart);
            var closed = branches[i].Closed || partner.ContainsKey((at, start));
            var chain = new List<Branch>();
            while (true)
            {
                used[at] = true;
                chain.Add(start ? branches[at] : branches[at].Reversed());
                if (!partner.TryGetValue((at, !start), out var on) || used[on.Branch])
                    break;
                (at, start) = (on.Branch, on.AtStart);
            }
            runs.Add(new(chain, closed));
        }
        return runs;
    }

    /// <summary>One side of the outline goes on from one end to the other without a corner.</summary>
    private bool IsCurve(Branch a, Branch b)
    {
        var outline = new OutlineCorners(ground);
        var (from, to) = (a.Steps[^1], b.Steps[^1]);
        return IsSmooth(from.Left, to.Right) || IsSmooth(to.Left, from.Right);

        bool IsSmooth(int start, int end)
        {
            var reach = Track.LongestDetour * ground.Points[start].DistanceTo(ground.Points[end]);
            var around = SharpBends.CornerReach * a.Last.Width;
            return outline.Chain(start, end, reach)?.TrueForAll(p => Math.Abs(outline.Turn(p, around)) < CurveCorner)
                ?? false;
        }
    }

    private static double Score(Branch a, Branch b)
    {
        var (headingA, headingB) = (a.Heading, b.Heading);
        var turn = Math.Abs(Math.Atan2(Vector.Cross(headingA, -headingB), Vector.Dot(headingA, -headingB)));
        var between = Vector.Between(a.Last.Middle, b.Last.Middle);
        var along = (headingA - headingB).Length > 0 ? (headingA - headingB).Unit : headingA;
        var aside = Math.Abs(Vector.Cross(along, between)) / Math.Max(a.Last.Width, b.Last.Width);
        return Vector.Dot(between, along) < 0 ? double.PositiveInfinity : turn + (aside * AsideAsTurn);
    }
}
