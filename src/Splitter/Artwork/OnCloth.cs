using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Artwork;

/// <summary>
/// Lays the artwork on the cloth as soon as its size is known: what does not lie on it, no hoop and no plan can help.
/// </summary>
internal static class OnCloth
{
    /// <summary>The recipe with what its cloth leaves to the artwork worked out.</summary>
    internal static Recipe For(Recipe recipe, Drawing drawing, Hoop hoop) =>
        recipe with
        {
            Cloth = recipe.Cloth.Under(drawing.Width, drawing.Height, hoop),
        };

    /// <summary>
    /// The same for the shortest hoop, if the artwork lies on the cloth: on those of others it does, too.
    /// </summary>
    internal static Result<Recipe> Lay(Recipe recipe, Drawing drawing)
    {
        var laid = For(recipe, drawing, recipe.Hoops.MinBy(hoop => Math.Max(hoop.Width, hoop.Height))!);
        var cloth = laid.Cloth;
        if (cloth.OnDrawing is not { } box || box.Contains(drawing.Bounds))
            return Result.Of(laid);
        var (least, at) = Least(cloth, drawing);
        return Result.Fail<Recipe>(
            PlanProblems.ArtworkOffCloth(recipe.PlaceOf("cloth.size"), drawing.Bounds, box, least, at)
        );
    }

    /// <summary>
    /// A cloth on which it lies there, as does it on any larger one, and where that must be moved to; null where it
    /// stays.
    /// </summary>
    private static ((int Width, int Height) Size, Point? At) Least(Cloth cloth, Drawing drawing)
    {
        var bounds = drawing.Bounds;
        // Broad strokes may reach past the drawing's edges.
        var (left, top) = (Math.Max(0, -bounds.Left), Math.Max(0, -bounds.Top));
        if (cloth.IsArtworkCentred)
        {
            var beside = Cloth.UpToPlace(Math.Max(left, bounds.Right - drawing.Width));
            var above = Cloth.UpToPlace(Math.Max(top, bounds.Bottom - drawing.Height));
            return ((drawing.Width + (2 * beside), drawing.Height + (2 * above)), null);
        }
        var stays = cloth.ArtworkAt.X >= left && cloth.ArtworkAt.Y >= top;
        // As it is written: the size has to do for what is rounded up.
        var at = stays
            ? cloth.ArtworkAt
            : new(Units.UpOnTape(Math.Max(cloth.ArtworkAt.X, left)), Units.UpOnTape(Math.Max(cloth.ArtworkAt.Y, top)));
        return ((at.X + bounds.Right, at.Y + bounds.Bottom), stays ? null : at);
    }
}
