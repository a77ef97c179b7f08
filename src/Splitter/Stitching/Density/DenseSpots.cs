using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Stitching.Density;

/// <summary>
/// Finds every spot where thread lies in too many layers or is sewn through too often, of a square millimetre or more.
/// </summary>
internal static class DenseSpots
{
    /// <summary>A shape that lies on a spot with less, in layers, has no part in it.</summary>
    private const double Share = 0.25;

    /// <summary>The worst first: by layers, then by holes.</summary>
    /// <param name="grid">What <see cref="ClothLayers"/> counts of these pieces.</param>
    /// <param name="limit">Layers that cloth and needle bear; a square with more is too many by however little.</param>
    /// <param name="asked">Squares that are asked for; null for all.</param>
    /// <param name="jobs">How many threads may work.</param>
    internal static ImmutableArray<DenseSpot> Of(
        Drawing drawing,
        ImmutableArray<SewnPiece> sewn,
        ThreadGrid grid,
        int limit,
        HashSet<Square>? asked = null,
        int jobs = 1
    )
    {
        ImmutableArray<ImmutableArray<Square>> grounds = [.. grid.Grounds(limit, ThreadGrid.MostHoles, asked)];
        var shares = Shares(drawing, sewn, grid.Numbers, grounds, jobs);
        return
        [
            .. grounds
                .Select((ground, i) => Spot(ground, grid, limit, shares[i]))
                .OrderByDescending(spot => spot.Full > 0)
                .ThenByDescending(spot => spot.Full > 0 ? spot.Layers : spot.Holes)
                .ThenBy(spot => (spot.Worst.Row, spot.Worst.Column)),
        ];
    }

    /// <param name="Shape">Its place in the drawing.</param>
    private readonly record struct Sewer(int Shape, int Hooping);

    private static DenseSpot Spot(
        ImmutableArray<Square> ground,
        ThreadGrid grid,
        int limit,
        IReadOnlyDictionary<Sewer, long> covered
    )
    {
        var least = (long)(Share * Units.SquareMillimetre * ground.Length);
        var (fullest, pierced) = (ground.MaxBy(grid.LayersOn), ground.MaxBy(grid.HolesIn));
        return new(
            [.. Worth(covered, least, sewer => sewer.Shape)],
            [.. Worth(covered, least, sewer => sewer.Hooping)],
            ground.Length
        )
        {
            Full = ground.Count(s => grid.LayersOn(s) > limit),
            Fullest = fullest,
            Layers = grid.LayersOn(fullest),
            Pierced = ground.Count(s => grid.HolesIn(s) > ThreadGrid.MostHoles),
            MostPierced = pierced,
            Holes = grid.HolesIn(pierced),
        };
    }

    /// <summary>Those that cover enough to be told, or all where many cover a little each.</summary>
    private static IEnumerable<int> Worth(IReadOnlyDictionary<Sewer, long> covered, long least, Func<Sewer, int> of)
    {
        var sums = covered.GroupBy(pair => of(pair.Key), pair => pair.Value).OrderBy(sum => sum.Key).ToList();
        var told = sums.Where(sum => sum.Sum() >= least).ToList();
        return (told.Count > 0 ? told : sums).Select(sum => sum.Key);
    }

    /// <summary>What each shape of each hooping covers of each ground, µm².</summary>
    private static ImmutableArray<Dictionary<Sewer, long>> Shares(
        Drawing drawing,
        ImmutableArray<SewnPiece> sewn,
        SquareNumbers numbers,
        ImmutableArray<ImmutableArray<Square>> grounds,
        int jobs
    )
    {
        ImmutableArray<Dictionary<Sewer, long>> shares = [.. grounds.Select(_ => new Dictionary<Sewer, long>())];
        if (grounds.IsEmpty)
            return shares;
        var map = new GroundMap(numbers, grounds);
        var placeOf = drawing.Shapes.Select((shape, i) => (shape.Id, i)).ToDictionary(p => p.Id, p => p.i);
        var covered = InOrder.Select(ClothLayers.ByHooping(sewn), jobs, Covered);
        foreach (var ((ground, sewer), area) in covered.SelectMany(hooping => hooping))
            shares[ground].Add(sewer, area);
        return shares;

        Dictionary<(int Ground, Sewer Sewer), long> Covered(ImmutableArray<SewnPiece> hooping)
        {
            var areas = new Dictionary<(int, Sewer), long>();
            foreach (var (piece, from, to, breadth) in ClothLayers.Threads(hooping))
            {
                if (!map.Meets(Box.Around([from, to]).Grown(ThreadGrid.ThreadWidth / 2)))
                    continue;
                foreach (var (square, area) in new CoveredSquares(from, to, breadth))
                    if (map.GroundOf(square) is { } ground)
                    {
                        var key = (ground, new Sewer(placeOf[piece.Shape.Id], piece.Hooping));
                        areas[key] = areas.GetValueOrDefault(key) + area;
                    }
            }
            return areas;
        }
    }
}
