using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Stitching.Density;

/// <summary>
/// Finds where more thread lies than the recipe says that cloth and needle bear, or more needle holes, and warns of it:
/// once of either, since the manifest lists every spot.
/// </summary>
internal static class LayerCheck
{
    /// <summary>Every spot, the worst first.</summary>
    /// <param name="jobs">How many threads may work.</param>
    internal static Result<ImmutableArray<DenseSpot>> Check(
        Drawing drawing,
        Recipe recipe,
        Plan plan,
        ImmutableArray<SewnPiece> sewn,
        int jobs = 1
    )
    {
        var limit = recipe.Cloth.MostLayers;
        // How densely a tape sews by itself was decided by whoever made it; where parts overlap there is more.
        var asked = drawing.IsStitched ? ClothLayers.Overlaps(sewn) : null;
        ImmutableArray<DenseSpot> spots =
        [
            .. DenseSpots
                .Of(drawing, sewn, ClothLayers.Of(sewn, jobs), limit, asked, jobs)
                .Where(spot => asked is null || spot.Hoopings.Length > 1),
        ];
        var (full, pierced) = (spots.Where(s => s.Full > 0).ToList(), spots.Where(s => s.Pierced > 0).ToList());
        var told = new List<Diagnostic>();
        if (full.Count > 0)
            told.Add(LayerProblems.TooManyLayers(drawing, plan, full, limit, recipe.Overlap.Width is not null));
        if (pierced.Count > 0)
            told.Add(LayerProblems.TooManyHoles(drawing, plan, pierced));
        return Result.From(spots, [.. told]);
    }
}
