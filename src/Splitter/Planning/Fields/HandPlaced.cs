using System.Globalization;
using Splitter.Diagnostics;
using Splitter.Recipes;

namespace Splitter.Planning.Fields;

/// <summary>Fields that the recipe lists one by one, and where they stand in it.</summary>
internal static class HandPlaced
{
    internal static IEnumerable<(Field Field, Place Place)> Of(Recipe recipe, FieldTemplate template)
    {
        foreach (var (key, fields) in Lists(recipe.Fields))
        foreach (var (i, listed) in fields.Index())
            yield return (
                template.At(listed.Centre, listed.Turn),
                recipe.PlaceOf(string.Create(CultureInfo.InvariantCulture, $"{key}[{i}]"))
            );
    }

    private static IEnumerable<(string Key, IEnumerable<ListedField> Fields)> Lists(FieldRules rules)
    {
        if (rules.Place is ListedFields listed)
            yield return ("fields.place", listed.Fields);
        yield return ("fields.fixed", rules.Fixed);
    }
}
