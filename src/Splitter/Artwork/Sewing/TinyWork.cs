using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Artwork.Sewing;

/// <summary>
/// A drawing that comes out so small that most of its areas are finer than thread: a width in the wrong unit, or
/// without its last digit. That is told once, instead of each shape that is left out.
/// </summary>
internal static class TinyWork
{
    /// <summary>Of fewer areas it is not the work that is small, but they are.</summary>
    private const int FewestAreas = 5;

    /// <summary>What to say of it; null where the size may well be meant.</summary>
    internal static Diagnostic? Told(Recipe recipe, Sheet sheet)
    {
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
