using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning.Seams;

namespace Splitter.Benchmarks.Least;

/// <summary>
/// What any seams between given fields in a given order show at least, by the price that a plan is judged by. A seam is
/// border of the two territories beside it, so that half the least borders of all territories, each found by itself,
/// are a bound (isolating cuts: Dahlhaus and others 1994, SIAM J. Comput. 23(4):864-894). No rule of planning limits
/// them: no room for overlaps, no smallest piece, no smooth line. Lengths are counted on a lattice, and no direction for
/// more than its length; the bound holds on the average of all places of the lattice, of which one is taken.
/// </summary>
internal static class LeastSeams
{
    /// <summary>
    /// Distance between places of the lattice, µm, where the work allows it. With 1 mm the bound is 4 to 6 per cent lower;
    /// half a step aside it differs by 1 per cent at most (the demo's large hoop, the coastline, the balloon).
    /// </summary>
    private const int Finest = 500;

    /// <summary>On a wider lattice seams would hardly find the gaps between shapes, µm.</summary>
    private const int Widest = 1000;

    /// <summary>Places of all lattices together: some seconds.</summary>
    private const long MostPlaces = 2_500_000;

    /// <summary>Millimetres of plain fill; null where it would take too long.</summary>
    /// <param name="grounds">Of the fields, in sewing order.</param>
    internal static double? Cost(Drawing drawing, ImmutableArray<Box> grounds)
    {
        var step = Finest;
        while (grounds.Sum(g => (long)g.Width * g.Height / step / step) > MostPlaces)
            step *= 2;
        if (step > Widest)
            return null;
        var wholeness = new Wholeness(drawing, grounds);
        var price = new LeastPrice(drawing, wholeness);
        return grounds
            .Select(
                (_, field) =>
                    new TerritoryBorder(drawing, wholeness, price, new Lattice(grounds, field, step), field).Least()
            )
            .Sum();
    }
}
