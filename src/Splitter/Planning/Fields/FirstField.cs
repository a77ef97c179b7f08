using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Planning.Fields;

/// <summary>Which field is sewn first, and what it must hold.</summary>
internal static class FirstField
{
    /// <summary>The crossing of the folds, and the point that the recipe names; null when it gives neither.</summary>
    /// <param name="middle">The middle of what is drawn.</param>
    internal static Box? Held(Recipe recipe, Point middle)
    {
        var folds = Folds.Held(recipe.Cloth, middle);
        return recipe.Fields.First is { } first ? (folds ?? Box.Empty).Including(first) : folds;
    }

    /// <summary>
    /// The field that is sewn first: of those that hold what it must the one nearest to the middle, so that errors add
    /// up over few hoopings; null when none does.
    /// </summary>
    internal static int? Among(ImmutableArray<Field> fields, Box? held, Point middle)
    {
        var (first, nearest) = ((int?)null, double.PositiveInfinity);
        for (var i = 0; i < fields.Length; i++)
        {
            var away = fields[i].Centre.DistanceTo(middle);
            if (away < nearest && (held is not { } box || fields[i].Usable.Contains(box)))
                (first, nearest) = (i, away);
        }
        return first;
    }
}
