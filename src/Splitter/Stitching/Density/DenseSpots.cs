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
    /// <param name="asked">Quarters of squares that are asked for; null for all.</param>
    /// <param name="jobs">How many threads may work.</param>
    internal static ImmutableArray<DenseSpot> Of(
        Drawing drawing,
        ImmutableArray<SewnPiece> sewn,
        ThreadGrid grid,
        int limit,
        HashSet<Quarter>? asked = null,
        int jobs = 1
    )
    {
        ImmutableArray<ImmutableArray<Square>> grounds = [.. FullGrounds.Of(grid, limit, ThreadGrid.MostHoles, asked)];
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

    /// <param name="thread">On each quarter.</param>
    private static DenseSpot Spot(
        ImmutableArray<Square> ground,
        ThreadGrid grid,
        int limit,
        Dictionary<Quarter, Dictionary<ThreadOwner, long>> thread
    )
    {
        var (fullest, pierced) = (ground.MaxBy(grid.LayersOn), ground.MaxBy(grid.HolesIn));
        var quarters = QuartersOf(ground);
        var full = ground.Where(s => grid.LayersOn(s) > limit).ToHashSet();
        var causes = full.ToDictionary(s => s, s => LayerCauses.Of(On(s, thread), limit));
        return new(
            [.. Worth(quarters, thread, owner => owner.Shape)],
            [.. Worth(quarters, thread, owner => owner.Hooping)]
        )
        {
            Quarters = quarters.Length,
            Causes =
            [
                .. from quarter in quarters
                let over = quarter.Squares.Where(full.Contains).ToList()
                where over.Count > 0
                select causes[over.MaxBy(grid.LayersOn)],
            ],
            Fullest = fullest,
            Layers = grid.LayersOn(fullest),
            Pierced = QuartersOf(ground.Where(s => grid.HolesIn(s) > ThreadGrid.MostHoles)).Length,
            MostPierced = pierced,
            Holes = grid.HolesIn(pierced),
        };
    }

    private static ImmutableArray<Quarter> QuartersOf(IEnumerable<Square> squares) =>
        [.. squares.SelectMany(s => s.Quarters).Distinct().OrderBy(q => (q.Row, q.Column))];

    /// <summary>What lies on a square, µm².</summary>
    private static Dictionary<ThreadOwner, long> On(
        Square square,
        Dictionary<Quarter, Dictionary<ThreadOwner, long>> thread
    ) =>
        square
            .Quarters.SelectMany(quarter => thread.GetValueOrDefault(quarter) ?? [])
            .GroupBy(on => on.Key, on => on.Value)
            .ToDictionary(on => on.Key, on => on.Sum());

    /// <summary>Those that cover enough to be told, or all where many cover a little each.</summary>
    private static IEnumerable<int> Worth(
        ImmutableArray<Quarter> quarters,
        Dictionary<Quarter, Dictionary<ThreadOwner, long>> thread,
        Func<ThreadOwner, int> of
    )
    {
        var least = (long)(Share * Quarter.Area * Units.SquareMillimetre * quarters.Length);
        var sums = quarters
            .SelectMany(quarter => thread.GetValueOrDefault(quarter) ?? [])
            .GroupBy(pair => of(pair.Key), pair => pair.Value)
            .OrderBy(sum => sum.Key)
            .ToList();
        var told = sums.Where(sum => sum.Sum() >= least).ToList();
        return (told.Count > 0 ? told : sums).Select(sum => sum.Key);
    }

    /// <summary>What is covered of each quarter of some grounds, µm².</summary>
    private static Dictionary<Quarter, Dictionary<ThreadOwner, long>> Thread(
        Drawing drawing,
        ImmutableArray<SewnPiece> sewn,
        ImmutableArray<ImmutableArray<Square>> grounds,
        int jobs
    )
    {
        var thread = new Dictionary<Quarter, Dictionary<ThreadOwner, long>>();
        if (grounds.IsEmpty)
            return thread;
        var map = new GroundMap([.. grounds.Select(ground => QuartersOf(ground))]);
        var placeOf = drawing.Shapes.Select((shape, i) => (shape.Id, i)).ToDictionary(p => p.Id, p => p.i);
        foreach (var covered in InOrder.Select(ClothLayers.ByHooping(sewn), jobs, Covered))
        foreach (var ((quarter, owner), area) in covered)
            (thread.TryGetValue(quarter, out var known) ? known : thread[quarter] = []).Add(owner, area);
        return thread;

        Dictionary<(Quarter Quarter, ThreadOwner Owner), long> Covered(ImmutableArray<SewnPiece> hooping)
        {
            var areas = new Dictionary<(Quarter, ThreadOwner), long>();
            foreach (var (piece, from, to, breadth) in ClothLayers.Threads(hooping))
            {
                if (!map.Meets(Box.Around([from, to.At]).Grown(ThreadGrid.ThreadWidth / 2)))
                    continue;
                var owner = new ThreadOwner(placeOf[piece.Shape.Id], piece.Hooping, to.Use);
                CoveredQuarters.Count(from, to.At, breadth, new OwnedQuarters(map, owner, areas));
            }
            return areas;
        }
    }

    private readonly struct OwnedQuarters(
        GroundMap map,
        ThreadOwner owner,
        Dictionary<(Quarter, ThreadOwner), long> areas
    ) : IQuarterCounter
    {
        public void Add(Quarter quarter, long area)
        {
            if (map.GroundOf(quarter) is not null)
                areas[(quarter, owner)] = areas.GetValueOrDefault((quarter, owner)) + area;
        }
    }
}
