using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Stitching.Runs;

/// <summary>
/// Where the needle goes in along connected lines, sewn without a break. Each segment has its holes once and for all:
/// every pass goes through the same ones. Double runs walk each segment twice; triple ones sew each stitch to, fro and
/// to again where they first come along, since three long walks would pull the line out of shape.
/// </summary>
internal static class RunWalks
{
    /// <summary>One walk for each connected part of the lines; its first hole and every further one.</summary>
    internal static ImmutableArray<ImmutableArray<Point>> Of(ImmutableArray<Polyline> lines, SewStyle style)
    {
        // Lines that cross are one walk where each is sewn out and back: once, half of them would be sewn again and
        // show.
        var network = new LineNetwork(lines, atCrossings: style.Passes == Passes.Double);
        var walks = Postman.Walks(
            network.Hubs,
            [.. network.Segments.Select(s => new Way(s.From, s.To, s.Line.Length))],
            style.Passes == Passes.Double ? 2 : 1
        );
        ImmutableArray<ImmutableArray<Point>> holes =
        [
            .. network.Segments.Select(s => Holes(EvenRun.Along(s.Line.Points, style.StitchLength))),
        ];
        return [.. walks.Select(walk => Walk(walk, holes, style.Passes))];
    }

    /// <summary>
    /// What would crowd is left out here, before passes in different directions could leave out different ones.
    /// </summary>
    private static ImmutableArray<Point> Holes(ImmutableArray<Point> places)
    {
        var kept = StitchRules.Thinned(places.Select(p => new Stitch(p, StitchUse.Run)));
        // Both ends belong to hubs, even where they are nearer together than a stitch is long.
        return kept.Length > 1 ? [.. kept.Select(s => s.At)] : [places[0].OnTape(), places[^1].OnTape()];
    }

    private static ImmutableArray<Point> Walk(
        ImmutableArray<Walked> walk,
        ImmutableArray<ImmutableArray<Point>> holes,
        Passes passes
    )
    {
        var path = ImmutableArray.CreateBuilder<Point>();
        foreach (var (way, forward, again) in walk)
        {
            var own = forward ? holes[way] : [.. holes[way].Reverse()];
            if (path.Count == 0)
                path.Add(own[0]);
            for (var i = 1; i < own.Length; i++)
            {
                if (passes == Passes.Triple && !again)
                    path.AddRange(own[i], own[i - 1]);
                path.Add(own[i]);
            }
        }
        return path.ToImmutable();
    }
}
