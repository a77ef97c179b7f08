using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Artwork.Columns;

/// <summary>Builds columns from runs of branches: first what is theirs alone, then their ends, the longest column first.</summary>
internal sealed class ColumnBuilder(InnerTriangles ground, CrossLines lines)
{
    /// <summary>At how many places a rung is looked at to see whether other columns cover it.</summary>
    private const int Probes = 16;

    /// <summary>A column does not count as covering its own end within this many widths of it.</summary>
    private const double OwnEnd = 2;

    internal ImmutableArray<Column> Build(List<ColumnJoining.Run> runs)
    {
        var ends = new ColumnEnds(ground, lines);
        var tracks = new List<(ColumnJoining.Run Run, Track Track)>();
        foreach (var run in runs)
        {
            var steps = run.Branches.SelectMany(b => b.Steps).ToList();
            tracks.Add((run, Track.Over(ground, steps, run.Closed && steps.Count > 2)));
        }
        for (var i = 0; i < tracks.Count; i++)
            if (!tracks[i].Track.Closed)
                tracks[i] = (tracks[i].Run, BothEnds(tracks[i].Run, tracks[i].Track, FreeEnd));
        foreach (
            var i in Enumerable
                .Range(0, tracks.Count)
                .OrderByDescending(i => Math.Round(tracks[i].Track.Length))
                .ThenBy(i => tracks[i].Track[0].Middle)
        )
        {
            if (tracks[i].Track.Closed)
                continue;
            Track JoinedEnd(Branch last, Track track)
            {
                if (last.EndJoint == Branch.Free)
                    return track;
                var covering = new CoveredGround(
                    tracks
                        .Where((_, k) => k != i)
                        .SelectMany(t => Pairs(t.Track, t.Track.Count))
                        .Concat(Pairs(track, Own(track)))
                );
                ends.IntoJoint(track, last.Heading, rung => Bare(rung, covering));
                return track;
            }
            tracks[i] = (tracks[i].Run, BothEnds(tracks[i].Run, tracks[i].Track, JoinedEnd));
        }
        return
        [
            .. tracks
                .Select(t => t.Track)
                .Where(t => t.Count >= 2)
                .Select(RungSpacing.Even)
                .Where(c => c.Rungs.Length >= 2),
        ];

        Track FreeEnd(Branch last, Track track)
        {
            if (last.EndJoint == Branch.Free)
                ends.ToOutline(track, last.Steps[^1], last.Heading);
            return track;
        }
    }

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

    private static (double From, double To)? Bare(Rung rung, CoveredGround covering)
    {
        // In the middle of its share each: an edge that two columns have in common covers nothing of either.
        var bare = Enumerable
            .Range(0, Probes)
            .Where(i => !covering.Contains(rung.Left.Towards(rung.Right, (i + 0.5) / Probes)))
            .ToList();
        return bare.Count == 0 ? null : (bare[0] / (double)Probes, (bare[^1] + 1) / (double)Probes);
    }
}
