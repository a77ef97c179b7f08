using Splitter.Diagnostics;
using Splitter.Recipes.Yaml;

namespace Splitter.Artwork.Sewing;

/// <summary>
/// The rules by which a recipe leaves one thing of the artwork unsewn, for whoever is told that it is left out. The
/// artwork is counted once, however much of it is left out.
/// </summary>
internal sealed class LeaveRules
{
    private readonly Dictionary<Place, int> here = [];

    /// <summary>What one colour paints at one place: the first of it, and of how many.</summary>
    private readonly Dictionary<(Place Place, string Colour), (DrawnElement First, int Count)> meant = [];

    /// <summary>How much has an id.</summary>
    private readonly Dictionary<string, int> named = new(StringComparer.Ordinal);

    /// <summary>The same of one paint.</summary>
    private readonly Dictionary<(string Id, string Colour, bool IsArea), int> painted = [];

    internal LeaveRules(Sheet sheet)
    {
        foreach (var element in sheet.Elements)
        {
            here[element.Place] = here.GetValueOrDefault(element.Place) + 1;
            var key = (element.Place, element.Color);
            var (first, count) = meant.GetValueOrDefault(key, (element, 0));
            meant[key] = (first, count + 1);
            foreach (var id in element.Ids.Distinct(StringComparer.Ordinal))
            {
                named[id] = named.GetValueOrDefault(id) + 1;
                var paint = (id, element.Color, element is DrawnArea);
                painted[paint] = painted.GetValueOrDefault(paint) + 1;
            }
        }
    }

    /// <summary>What to write, and what to draw for it; null where no rule means this thing and nothing else.</summary>
    /// <param name="name">An id to give it where it has none.</param>
    internal string? For(Place place, string colour, string name)
    {
        if (!meant.TryGetValue((place, colour), out var thing))
            return null;
        var id = thing.First.Id ?? name;
        if (!YamlText.IsPlain(id) || Match(id, thing.First, thing.Count) is not { } match)
            return null;
        var first = thing.First.Id is null ? $"give it the id '{id}' and " : "";
        return $"{first}write first under 'artwork.sew' of the recipe: - {{ match: {{ {match} }}, as: leave }}";
    }

    /// <summary>By its id alone, or one paint of it.</summary>
    private string? Match(string id, DrawnElement first, int count)
    {
        var match = $"id: {YamlText.Quoted(id)}";
        if (count == (first.Id is null ? here[first.Place] : named.GetValueOrDefault(id)))
            return match;
        var isArea = first is DrawnArea;
        return count == 1 && (first.Id is null || painted.GetValueOrDefault((id, first.Color, isArea)) == 1)
            ? $"{match}, {(isArea ? "fill" : "stroke")}: \"{first.Color}\""
            : null;
    }
}
