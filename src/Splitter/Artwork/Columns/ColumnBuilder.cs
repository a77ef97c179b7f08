using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Artwork.Columns;

/// <summary>
/// Builds columns from runs of branches: first what is theirs alone, then their ends, the longest column first.
/// </summary>
internal sealed class ColumnBuilder(InnerTriangles ground, CrossLines lines)
{
    /// <summary>At how many places a rung is looked at to see whether other columns cover it.</summary>
    private const int Probes = 16;

    /// <summary>A column does not count as covering its own end within this many widths of it.</summary>
    private const double OwnEnd = 2;

    /// <summary>An end of a run at a joint: the last sound rung before it, and where it leads.</summary>
    private sealed record JointEnd(Rung Last, Vector Heading);

    /// <param name="centre">Where a joint's branches meet.</param>
    internal ImmutableArray<Column> Build(List<ColumnJoining.Run> runs, Func<int, Point> centre)
    {
        var ends = new ColumnEnds(ground, lines);
        var tracks = runs.ConvertAll(FirstPart);
        var stars = Stars(runs, centre);
        var joints = new List<JointEnd>();
        var covered = tracks.ConvertAll(Covered);
        foreach (
            var i in Enumerable
                .Range(0, tracks.Count)
                .Where(i => !tracks[i].Closed)
                .OrderByDescending(i => Math.Round(tracks[i].Length))
                .ThenBy(i => tracks[i][0].Middle)
        )
        {
            tracks[i] = BothEnds(runs[i], tracks[i], (last, track) => JoinedEnd(i, last, track));
            covered[i] = Covered(tracks[i]);
        }
        foreach (var end in joints)
        {
            var near = covered.FindAll(c => c.Meets(ColumnEnds.Reach(end.Last)));
            var behind = ends.Behind(end.Last, end.Heading, rung => Bare(rung, near)).ToList();
            tracks.AddRange(behind);
            covered.AddRange(behind.ConvertAll(Covered));
        }
        return [.. tracks.Where(t => t.Count >= 2).Select(RungSpacing.Even).Where(c => c.Rungs.Length >= 2)];

        Track FirstPart(ColumnJoining.Run run)
        {
            var steps = run.Branches.SelectMany(b => b.Steps).ToList();
            var track = Track.Over(ground, steps, run.Closed && steps.Count > 2);
            return track.Closed ? track : BothEnds(run, track, FreeEnd);
        }

        Track FreeEnd(Branch last, Track track)
        {
            if (last.EndJoint == Branch.Free)
                ends.ToOutline(track, last.Steps[^1], last.Heading);
            return track;
        }

        Track JoinedEnd(int run, Branch last, Track track)
        {
            if (last.EndJoint == Branch.Free)
                return track;
            if (stars.TryGetValue(last.EndJoint, out var star))
            {
                var arm = Direction(last, centre);
                ends.IntoStar(track, -arm, rung => star.Own(rung, arm));
                return track;
            }
            joints.Add(new(track.Last, last.Heading));
            var reach = ColumnEnds.Reach(track.Last);
            List<CoveredGround> near =
            [
                .. covered.Where((c, k) => k != run && c.Meets(reach)),
                new(Pairs(track, Own(track))),
            ];
            ends.IntoJoint(track, last.Heading, rung => Bare(rung, near));
            return track;
        }
    }

    private static Dictionary<int, Sectors> Stars(List<ColumnJoining.Run> runs, Func<int, Point> centre) =>
        runs.Where(r => !r.Closed)
            .SelectMany(r => new[] { r.Branches[0].Reversed(), r.Branches[^1] })
            .Where(b => b.EndJoint != Branch.Free)
            .GroupBy(b => b.EndJoint)
            .Where(joint => joint.Count() >= Sectors.FewestArms)
            .ToDictionary(
                joint => joint.Key,
                joint => new Sectors(centre(joint.Key), joint.Select(b => Direction(b, centre)))
            );

    /// <summary>In which an arm leaves the middle of a star.</summary>
    private static Vector Direction(Branch branch, Func<int, Point> centre) =>
        Vector.Between(centre(branch.EndJoint), branch.Last.Middle).Unit;

    private static CoveredGround Covered(Track track) => new(Pairs(track, track.Count));

    private static Track BothEnds(ColumnJoining.Run run, Track track, Func<Branch, Track, Track> finish) =>
        finish(run.Branches[0].Reversed(), finish(run.Branches[^1], track).Reversed()).Reversed();

    private static int Own(Track track)
    {
        var (last, count) = (track.Last, track.Count);
        while (count > 0 && track[count - 1].Middle.DistanceTo(last.Middle) < OwnEnd * last.Width)
            count--;
        return count;
    }

    private static IEnumerable<(Rung, Rung)> Pairs(Track track, int count)
    {
        for (var i = 1; i < count; i++)
            yield return (track[i - 1], track[i]);
    }

    private static (double From, double To)? Bare(Rung rung, List<CoveredGround> covered)
    {
        // In the middle of its share each: an edge that two columns have in common covers nothing of either.
        var bare = Enumerable
            .Range(0, Probes)
            .Where(i =>
                rung.Left.Towards(rung.Right, (i + 0.5) / Probes) is var at && !covered.Exists(c => c.Contains(at))
            )
            .ToList();
        return bare.Count == 0 ? null : (bare[0] / (double)Probes, (bare[^1] + 1) / (double)Probes);
    }
}
