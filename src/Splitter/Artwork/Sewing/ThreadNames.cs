using System.Collections.Frozen;
using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Recipes;
using Splitter.Recipes.Keys;

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

    /// <summary>Threads for no colour of the artwork that look like a slip of the pen for one that has none.</summary>
    internal static IEnumerable<Diagnostic> Mistyped(Recipe recipe, Sheet sheet)
    {
        var drawn = Colours(sheet);
        var unnamed = drawn.RemoveAll(colour => recipe.Threads.Any(t => t.Color == colour));
        foreach (var (i, thread) in recipe.Threads.Index())
            if (!drawn.Contains(thread.Color) && NearColour.Of(thread.Color, unnamed) is { } near)
                yield return DrawingProblems.ThreadNearlyDrawn(
                    recipe.PlaceOf(FormattableString.Invariant($"threads[{i}].color")),
                    thread.Name,
                    thread.Color,
                    near
                );
    }

    /// <summary>
    /// Colours that are sewn and that a list of threads has forgotten, but for those that a mistyped thread is meant
    /// for. A recipe without a list names none on purpose, and a full list has no room.
    /// </summary>
    internal static IEnumerable<Diagnostic> Forgotten(Recipe recipe, Sheet sheet)
    {
        var meant = recipe.Threads.Select(t => t.Color).ToHashSet(StringComparer.Ordinal);
        var drawn = Colours(sheet);
        var idle = meant.Except(drawn, StringComparer.Ordinal).ToList();
        var forgotten = sheet
            .Elements.Where(e => SewRules.For(e, recipe.Artwork.Sew)?.As != SewAs.Leave)
            .Select(e => e.Color)
            .Distinct(StringComparer.Ordinal)
            .Where(colour => !meant.Contains(colour) && NearColour.Of(colour, idle) is null)
            .ToList();
        if (recipe.Threads.Length is > 0 and < RecipeKeys.MostThreads && forgotten.Count > 0)
            yield return DrawingProblems.ColoursWithoutThread(recipe.PlaceOf("threads"), forgotten);
    }

    /// <summary>
    /// The colours of the artwork in the order in which they first appear: a shape's thread is an index here.
    /// </summary>
    internal static ImmutableArray<string> Colours(Sheet sheet) =>
        [.. sheet.Elements.Select(e => e.Color).Distinct(StringComparer.Ordinal)];

    /// <summary>The same the other way round: the thread of each colour.</summary>
    internal static FrozenDictionary<string, int> Numbers(Sheet sheet) =>
        Colours(sheet).Index().ToFrozenDictionary(c => c.Item, c => c.Index, StringComparer.Ordinal);
}
