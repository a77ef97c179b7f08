using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Stitching.Density;

/// <summary>Finds where shapes lie over each other in too many layers.</summary>
internal static class FullSpots
{
    /// <summary>
    /// Layers are counted whole: one too many is there where it covers more than half of a square. Rows 0.4 mm apart
    /// cross a square two or three times, so that less tells nothing.
    /// </summary>
    private const double Half = 0.5;

    /// <summary>
    /// Least excess of ground that hangs together, layers times mm²: at the edge of two fills, and where thread is
    /// tied, a little lies over each other in all embroidery. Common practice, no source.
    /// </summary>
    private const double Least = 9;

    /// <summary>A shape that lies on the ground with less, in layers, has no part in it.</summary>
    private const double Share = 0.25;

    /// <summary>One for each set of shapes, the worst first.</summary>
    /// <param name="grid">What <see cref="ClothLayers"/> counts of these pieces.</param>
    /// <param name="asked">Squares that are asked for; null for all.</param>
    internal static ImmutableArray<FullSpot> Of(
        Drawing drawing,
        ImmutableArray<SewnPiece> sewn,
        ThreadGrid grid,
        int limit,
        HashSet<Square>? asked = null
    )
    {
        ImmutableArray<ImmutableArray<Square>> grounds =
        [
            .. grid.Grounds(limit + Half, asked).Where(g => g.Sum(s => grid.LayersOn(s) - limit) >= Least),
        ];
        var shares = Shares(drawing, sewn, grounds);
        return
        [
            .. grounds
                .Select((ground, i) => Spot(ground, grid, limit, shares[i]))
                .GroupBy(spot => string.Join(' ', spot.Shapes), StringComparer.Ordinal)
                .Select(Joined)
                .OrderByDescending(spot => spot.Excess)
                .ThenBy(spot => (spot.Fullest.Row, spot.Fullest.Column)),
        ];
    }

    /// <param name="Shape">Its place in the drawing.</param>
    private readonly record struct Sewer(int Shape, int Hooping);

    private static FullSpot Spot(
        ImmutableArray<Square> ground,
        ThreadGrid grid,
        int limit,
        IReadOnlyDictionary<Sewer, long> covered
    )
    {
        var fullest = ground.MaxBy(grid.LayersOn);
        var least = (long)(Share * Units.SquareMillimetre * ground.Length);
        return new(
            [.. Worth(covered, least, sewer => sewer.Shape)],
            [.. Worth(covered, least, sewer => sewer.Hooping)],
            fullest,
            grid.LayersOn(fullest),
            grid.HolesIn(fullest),
            ground.Length,
            ground.Sum(s => grid.LayersOn(s) - limit)
        );
    }

    /// <summary>Those that cover enough to be told, or all where many cover a little each.</summary>
    private static IEnumerable<int> Worth(IReadOnlyDictionary<Sewer, long> covered, long least, Func<Sewer, int> of)
    {
        var sums = covered.GroupBy(pair => of(pair.Key), pair => pair.Value).OrderBy(sum => sum.Key).ToList();
        var told = sums.Where(sum => sum.Sum() >= least).ToList();
        return (told.Count > 0 ? told : sums).Select(sum => sum.Key);
    }

    private static FullSpot Joined(IEnumerable<FullSpot> spots) =>
        spots.MaxBy(s => s.Layers)! with
        {
            Hoopings = [.. spots.SelectMany(s => s.Hoopings).Distinct().Order()],
            Squares = spots.Sum(s => s.Squares),
            Excess = spots.Sum(s => s.Excess),
        };

    /// <summary>What each shape of each hooping covers of each ground, µm².</summary>
    private static ImmutableArray<Dictionary<Sewer, long>> Shares(
        Drawing drawing,
        ImmutableArray<SewnPiece> sewn,
        ImmutableArray<ImmutableArray<Square>> grounds
    )
    {
        ImmutableArray<Dictionary<Sewer, long>> shares = [.. grounds.Select(_ => new Dictionary<Sewer, long>())];
        if (grounds.IsEmpty)
            return shares;
        var groundOf = grounds.SelectMany((g, i) => g.Select(s => (s, i))).ToDictionary(p => p.s, p => p.i);
        var placeOf = drawing.Shapes.Select((shape, i) => (shape.Id, i)).ToDictionary(p => p.Id, p => p.i);
        foreach (var thread in ClothLayers.Threads(sewn))
        foreach (var (square, length) in ThreadGrid.Crossed(thread.From, thread.To))
            if (groundOf.TryGetValue(square, out var ground))
            {
                var sewer = new Sewer(placeOf[thread.Piece.Shape.Id], thread.Piece.Hooping);
                shares[ground][sewer] =
                    shares[ground].GetValueOrDefault(sewer) + ThreadGrid.Covered(length, thread.Breadth);
            }
        return shares;
    }
}
