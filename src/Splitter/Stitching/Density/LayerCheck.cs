using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Stitching.Density;

/// <summary>Warns of ground where more thread lies than the recipe says that cloth and needle bear.</summary>
internal static class LayerCheck
{
    /// <summary>Sets of shapes that have a warning of their own, the worst; the first of them counts the others.</summary>
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
        var spots = FullSpots.Of(drawing, sewn, ClothLayers.Of(sewn), limit);
        return Result.From(
            sewn,
            spots
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
                )
        );
    }
}
