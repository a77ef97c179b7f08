using System.Collections.Immutable;
using Splitter.Artwork;

namespace Splitter.Stitching.Density;

/// <summary>Where the same shapes pierce the cloth more often than it bears.</summary>
/// <param name="Shapes">By their places in the drawing.</param>
/// <param name="Hoopings">Whose needle holes lie there.</param>
/// <param name="Fullest">The square with most holes.</param>
/// <param name="Holes">In that square.</param>
/// <param name="Squares">How many square millimetres have more than the limit.</param>
internal sealed record PiercedSpot(
    ImmutableArray<int> Shapes,
    ImmutableArray<int> Hoopings,
    Square Fullest,
    int Holes,
    int Squares
);

/// <summary>Finds where shapes that lie over each other pierce the cloth too often.</summary>
internal static class PiercedSpots
{
    /// <summary>One for each set of shapes, the worst first.</summary>
    /// <param name="grid">What <see cref="ClothLayers"/> counts of these pieces.</param>
    /// <param name="asked">Squares that are asked for; null for all.</param>
    internal static ImmutableArray<PiercedSpot> Of(
        Drawing drawing,
        ImmutableArray<SewnPiece> sewn,
        ThreadGrid grid,
        HashSet<Square>? asked = null
    )
    {
        var squares = grid
            .Squares.Where(s => grid.HolesIn(s) > ThreadGrid.MostHoles && asked?.Contains(s) != false)
            .ToHashSet();
        if (squares.Count == 0)
            return [];
        var placeOf = drawing.Shapes.Select((shape, i) => (shape.Id, i)).ToDictionary(p => p.Id, p => p.i);
        var sewers =
            from piece in sewn
            from block in piece.Blocks
            from stitch in block.Stitches
            let square = Square.At(stitch.At)
            where squares.Contains(square)
            group (Shape: placeOf[piece.Piece.Shape.Id], piece.Piece.Hooping) by square;
        return
        [
            .. sewers
                .Select(s => new PiercedSpot(
                    [.. s.Select(sewer => sewer.Shape).Distinct().Order()],
                    [.. s.Select(sewer => sewer.Hooping).Distinct().Order()],
                    s.Key,
                    grid.HolesIn(s.Key),
                    Squares: 1
                ))
                .GroupBy(spot => string.Join(' ', spot.Shapes), StringComparer.Ordinal)
                .Select(Joined)
                .OrderByDescending(spot => spot.Holes)
                .ThenBy(spot => (spot.Fullest.Row, spot.Fullest.Column)),
        ];
    }

    private static PiercedSpot Joined(IEnumerable<PiercedSpot> spots) =>
        spots.OrderByDescending(s => s.Holes).ThenBy(s => (s.Fullest.Row, s.Fullest.Column)).First() with
        {
            Hoopings = [.. spots.SelectMany(s => s.Hoopings).Distinct().Order()],
            Squares = spots.Count(),
        };
}
