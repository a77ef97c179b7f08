using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Recipes.Yaml;

namespace Splitter.Artwork.Sewing;

/// <summary>
/// The rule by which a recipe leaves one thing of the artwork unsewn, for whoever is told that it is left out.
/// </summary>
internal static class LeaveRule
{
    /// <summary>What to write, and what to draw for it; null where no rule means this thing and nothing else.</summary>
    /// <param name="name">An id to give it where it has none.</param>
    internal static string? For(Sheet sheet, Place place, string colour, string name)
    {
        ImmutableArray<DrawnElement> here = [.. sheet.Elements.Where(e => e.Place == place)];
        ImmutableArray<DrawnElement> meant = [.. here.Where(e => e.Color == colour)];
        if (meant.IsEmpty)
            return null;
        var own = meant[0].Id;
        ImmutableArray<DrawnElement> named = own is null
            ? here
            : [.. sheet.Elements.Where(e => e.Ids.Contains(own, StringComparer.Ordinal))];
        var id = own ?? name;
        if (!YamlText.IsPlain(id) || Match(id, named, meant) is not { } match)
            return null;
        var first = own is null ? $"give it the id '{id}' and " : "";
        return $"{first}write first under 'artwork.sew' of the recipe: - {{ match: {{ {match} }}, as: leave }}";
    }

    /// <summary>By its id alone, or one paint of it.</summary>
    /// <param name="named">All that has the id.</param>
    private static string? Match(string id, ImmutableArray<DrawnElement> named, ImmutableArray<DrawnElement> meant)
    {
        var match = $"id: {YamlText.Quoted(id)}";
        if (named.Length == meant.Length)
            return match;
        bool HasPaint(DrawnElement e) => e.Color == meant[0].Color && e is DrawnArea == meant[0] is DrawnArea;
        return meant.Length == 1 && named.Count(HasPaint) == 1
            ? $"{match}, {(meant[0] is DrawnArea ? "fill" : "stroke")}: \"{meant[0].Color}\""
            : null;
    }
}
