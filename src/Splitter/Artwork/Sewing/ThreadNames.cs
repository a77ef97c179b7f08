using System.Collections.Immutable;
using Splitter.Recipes;

namespace Splitter.Artwork.Sewing;

/// <summary>One thread for each colour of the artwork.</summary>
internal static class ThreadNames
{
    /// <summary>
    /// In the order in which colours first appear. A colour takes the name of the recipe's first thread of exactly that
    /// colour, else the colour itself serves as its name.
    /// </summary>
    internal static ImmutableArray<SewThread> Of(Recipe recipe, Sheet sheet) =>
        [
            .. Colours(sheet)
                .Select(colour => new SewThread(
                    recipe.Threads.FirstOrDefault(t => t.Color == colour)?.Name ?? colour,
                    colour
                )),
        ];

    /// <summary>The colours of the artwork in the order in which they first appear: a shape's thread is an index here.</summary>
    internal static ImmutableArray<string> Colours(Sheet sheet) =>
        [.. sheet.Elements.Select(e => e.Color).Distinct(StringComparer.Ordinal)];
}
