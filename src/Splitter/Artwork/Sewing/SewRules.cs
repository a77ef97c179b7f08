using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Recipes;
using Splitter.Recipes.Language;

namespace Splitter.Artwork.Sewing;

/// <summary>Which rule of the recipe an element follows.</summary>
internal static class SewRules
{
    /// <summary>The first rule that matches, or null.</summary>
    internal static SewRule? For(DrawnElement element, ImmutableArray<SewRule> rules) =>
        rules.FirstOrDefault(rule => Matches(element, rule.Match));

    /// <summary>Rules that no element is meant by, whichever comes first.</summary>
    internal static IEnumerable<Diagnostic> Unused(Recipe recipe, Sheet sheet) =>
        recipe
            .Artwork.Sew.Where(rule => !sheet.Elements.Any(e => Matches(e, rule.Match)))
            .Select(rule =>
                DrawingProblems.RuleWithoutShape(
                    recipe.PlaceOf($"{rule.Path}.match"),
                    rule.Match,
                    Near(rule.Match.Id, sheet.Elements.SelectMany(e => e.Ids))
                        ?? Near(rule.Match.Class, sheet.Elements.SelectMany(e => e.Classes))
                )
            );

    /// <summary>The name most like one that is not there.</summary>
    private static string? Near(string? asked, IEnumerable<string> names)
    {
        var all = names.Distinct(StringComparer.Ordinal).ToList();
        return asked is null || all.Contains(asked) ? null : Words.Nearest(asked, all);
    }

    /// <summary>
    /// A rule for fills looks at areas only, one for strokes at lines only: an element with both is two things to sew.
    /// </summary>
    internal static bool Matches(DrawnElement element, SewMatch match) =>
        (match.Id is not { } id || element.Ids.Contains(id, StringComparer.Ordinal))
        && (match.Class is not { } name || element.Classes.Contains(name, StringComparer.Ordinal))
        && (match.Fill is not { } fill || (element is DrawnArea && element.Color == fill))
        && (match.Stroke is not { } stroke || (element is DrawnLine && element.Color == stroke))
        && (match.StrokeWidth is not { } bound || (element is DrawnLine line && bound.Holds(line.Width)));
}
