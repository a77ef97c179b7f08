using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Stitching.Density;

/// <summary>
/// Warns of ground where more thread lies than the recipe says that cloth and needle bear, or more needle holes.
/// </summary>
internal static class LayerCheck
{
    /// <summary>
    /// Sets of shapes that have a warning of their own, the worst; the first of them counts the others.
    /// </summary>
    private const int MostTold = 3;

    /// <summary>Hands the pieces on.</summary>
    internal static Result<ImmutableArray<SewnPiece>> Check(
        Drawing drawing,
        Recipe recipe,
        Plan plan,
        ImmutableArray<SewnPiece> sewn
    )
    {
        var limit = recipe.Cloth.MostLayers;
        var grid = ClothLayers.Of(sewn);
        // How densely a tape sews by itself was decided by whoever made it; where parts overlap there is more.
        var asked = drawing.IsStitched ? ClothLayers.Overlaps(sewn) : null;
        var spots = FullSpots
            .Of(drawing, sewn, grid, limit, asked)
            .Where(spot => asked is null || spot.Hoopings.Length > 1)
            .ToImmutableArray();
        // What is told of layers tells of holes too.
        ImmutableArray<PiercedSpot> pierced =
        [
            .. PiercedSpots
                .Of(drawing, sewn, grid, asked)
                .Where(spot => asked is null || spot.Hoopings.Length > 1)
                .Where(spot => !spots.Any(full => full.Shapes.SequenceEqual(spot.Shapes))),
        ];
        var full = spots
            .Take(MostTold)
            .Select(
                (spot, i) =>
                    LayerProblems.TooManyLayers(
                        [.. spot.Shapes.Select(shape => drawing.Shapes[shape])],
                        [.. spot.Hoopings.Select(hooping => plan.Hoopings[hooping].Letter)],
                        spot,
                        limit,
                        i == 0 ? [.. spots.Skip(MostTold)] : [],
                        plan.Hoop,
                        recipe.Overlap.Width is not null
                    )
            );
        var torn = pierced
            .Take(MostTold)
            .Select(
                (spot, i) =>
                    LayerProblems.TooManyHoles(
                        [.. spot.Shapes.Select(shape => drawing.Shapes[shape])],
                        [.. spot.Hoopings.Select(hooping => plan.Hoopings[hooping].Letter)],
                        spot,
                        i == 0 ? [.. pierced.Skip(MostTold)] : [],
                        plan.Hoop
                    )
            );
        return Result.From(sewn, [.. full, .. torn]);
    }
}
