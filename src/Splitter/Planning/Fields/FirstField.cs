using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Planning.Fields;

/// <summary>What the field that is sewn first must hold.</summary>
internal static class FirstField
{
    /// <summary>The crossing of the folds, and the point that the recipe names; null when it gives neither.</summary>
    /// <param name="middle">The middle of what is drawn.</param>
    internal static Box? Held(Recipe recipe, Point middle)
    {
        var folds = Folds.Held(recipe.Cloth, middle);
        return recipe.Fields.First is { } first ? (folds ?? Box.Empty).Including(first) : folds;
    }
}
