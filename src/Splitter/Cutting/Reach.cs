using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Cutting;

/// <summary>
/// The ground that one hooping sews of cut shapes: its territory, and past each seam the overlap of that join. Fill
/// rows with even and odd lattice numbers have a ground each; runs have the wider one of every seam; satin, which is
/// thick, what all rows reach at least: it covers as much misfit.
/// </summary>
internal sealed record Reach(Region Territory, Region EvenRows, Region OddRows, Region Lines, Region Columns)
{
    internal static Reach Of(Region territory, IEnumerable<Strip> own)
    {
        ImmutableArray<Strip> strips = [.. own];
        return new(territory, With(s => s.EvenRows), With(s => s.OddRows), With(s => s.Full), With(s => s.Columns));

        Region With(Func<Strip, Region> ground) =>
            strips.IsEmpty ? territory : Polygons.Union([territory, .. strips.Select(ground)]);
    }
}
