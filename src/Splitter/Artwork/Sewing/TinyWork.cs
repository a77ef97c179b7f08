using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Artwork.Sewing;

/// <summary>
/// A drawing that comes out a tenth as wide as it states itself, or so small that most of its areas are finer than
/// thread: a width in the wrong unit, or without its last digit. That is told once, instead of each area left out.
/// </summary>
internal static class TinyWork
{
    /// <summary>Of fewer areas it is not the work that is small, but they are.</summary>
    private const int FewestAreas = 5;

    /// <summary>How near to a tenth a width is one, as a share: it may be written with two digits.</summary>
    private const double NearTenth = 0.05;

    /// <summary>What to say of it; null where the size may well be meant.</summary>
    internal static Diagnostic? Told(Recipe recipe, Sheet sheet)
    {
        if (
            sheet.StatedWidth is { } stated
            && recipe.Places.ContainsKey("artwork.width")
            && Math.Abs((10.0 * sheet.Width / stated) - 1) <= NearTenth
        )
            return DrawingProblems.TenthOfDrawing(
                recipe.PlaceOf("artwork.width"),
                Units.ToMillimetres(sheet.Width),
                Units.ToMillimetres(stated)
            );
        ImmutableArray<DrawnArea> areas =
        [
            .. sheet
                .Elements.OfType<DrawnArea>()
                .Where(a => SewRules.For(a, recipe.Artwork.Sew)?.As is not (SewAs.Leave or SewAs.Run)),
        ];
        if (areas.Length < FewestAreas)
            return null;
        var fine = areas.Count(a => IsFinerThanThread(a.Ground));
        return 2 * fine <= areas.Length
            ? null
            : DrawingProblems.TinyWork(
                recipe.PlaceOf("artwork.width"),
                fine,
                areas.Length,
                Units.ToMillimetres(sheet.Width),
                Units.ToMillimetres(sheet.Height)
            );
    }

    /// <summary>
    /// Ground that holds no disc as wide as a thread has no more area than its outline's length by half of it.
    /// </summary>
    private static bool IsFinerThanThread(Region ground) =>
        ground.Area <= ground.Rings.Sum(r => r.ToPolyline().Length) * SewDefaults.ThreadWidth / 2
        && !InscribedDisc.Fits(ground, SewDefaults.ThreadWidth);
}
