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
        var thread = Thread(drawing, sewn, grounds, jobs);
        return
        [
            .. grounds
                .Select(ground => Spot(ground, grid, limit, thread))
                .OrderByDescending(spot => spot.Full > 0)
                .ThenByDescending(spot => spot.Full > 0 ? spot.Layers : spot.Holes)
                .ThenBy(spot => (spot.Worst.Row, spot.Worst.Column)),
        ];
    }

    /// <param name="thread">On each square.</param>
    private static DenseSpot Spot(
        ImmutableArray<Square> ground,
        ThreadGrid grid,
        int limit,
        Dictionary<Square, Dictionary<ThreadOwner, long>> thread
    )
    {
        var (fullest, pierced) = (ground.MaxBy(grid.LayersOn), ground.MaxBy(grid.HolesIn));
        return new(
            [.. Worth(ground, thread, owner => owner.Shape)],
            [.. Worth(ground, thread, owner => owner.Hooping)],
            ground.Length
        )
        {
            Causes =
            [
                .. ground
                    .Where(s => grid.LayersOn(s) > limit)
                    .OrderByDescending(s => s == fullest)
                    .Select(s => LayerCauses.Of(thread[s], limit)),
            ],
            Fullest = fullest,
            Layers = grid.LayersOn(fullest),
            Pierced = ground.Count(s => grid.HolesIn(s) > ThreadGrid.MostHoles),
            MostPierced = pierced,
            Holes = grid.HolesIn(pierced),
        };
    }

    /// <summary>Those that cover enough to be told, or all where many cover a little each.</summary>
    private static IEnumerable<int> Worth(
        ImmutableArray<Square> ground,
        Dictionary<Square, Dictionary<ThreadOwner, long>> thread,
        Func<ThreadOwner, int> of
    )
    {
        var least = (long)(Share * Units.SquareMillimetre * ground.Length);
        var sums = ground
            .SelectMany(square => thread.GetValueOrDefault(square) ?? [])
            .GroupBy(pair => of(pair.Key), pair => pair.Value)
            .OrderBy(sum => sum.Key)
            .ToList();
        var told = sums.Where(sum => sum.Sum() >= least).ToList();
        return (told.Count > 0 ? told : sums).Select(sum => sum.Key);
    }

    /// <summary>What is covered of each square of some grounds, µm².</summary>
    private static Dictionary<Square, Dictionary<ThreadOwner, long>> Thread(
        Drawing drawing,
        ImmutableArray<SewnPiece> sewn,
        ImmutableArray<ImmutableArray<Square>> grounds,
        int jobs
    )
    {
        var thread = new Dictionary<Square, Dictionary<ThreadOwner, long>>();
        if (grounds.IsEmpty)
            return thread;
        var map = new GroundMap(grounds);
        var placeOf = drawing.Shapes.Select((shape, i) => (shape.Id, i)).ToDictionary(p => p.Id, p => p.i);
        foreach (var covered in InOrder.Select(ClothLayers.ByHooping(sewn), jobs, Covered))
        foreach (var ((square, owner), area) in covered)
            (thread.TryGetValue(square, out var known) ? known : thread[square] = []).Add(owner, area);
        return thread;

        Dictionary<(Square Square, ThreadOwner Owner), long> Covered(ImmutableArray<SewnPiece> hooping)
        {
            var areas = new Dictionary<(Square, ThreadOwner), long>();
            foreach (var (piece, from, to, breadth) in ClothLayers.Threads(hooping))
            {
                if (!map.Meets(Box.Around([from, to.At]).Grown(ThreadGrid.ThreadWidth / 2)))
                    continue;
                foreach (var (square, area) in new CoveredSquares(from, to.At, breadth))
                    if (map.GroundOf(square) is not null)
                    {
                        var key = (square, new ThreadOwner(placeOf[piece.Shape.Id], piece.Hooping, to.Use));
                        areas[key] = areas.GetValueOrDefault(key) + area;
                    }
            }
            return areas;
        }
    }
}
