using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;

namespace Splitter.Cutting;

/// <summary>
/// The ground that one hooping sews of cut shapes: its territory, and past each seam the overlap of that join. Fill rows
/// with even and odd lattice numbers have a ground each; satin and runs have the wider one of every seam.
/// </summary>
internal sealed record Reach(Region Territory, Region EvenRows, Region OddRows, Region Lines)
{
    internal static Reach Of(Plan plan, int hooping, ImmutableArray<Strip> strips)
    {
        var territory = plan.Hoopings[hooping].Territory;
        var own = strips.Where(s => s.Part == hooping).ToList();
        return new(territory, With(s => s.EvenRows), With(s => s.OddRows), With(s => s.Full));

        Region With(Func<Strip, Region> ground) =>
            own.Count == 0 ? territory : Polygons.Union([territory, .. own.Select(ground)]);
    }
}
