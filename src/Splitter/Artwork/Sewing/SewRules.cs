using System.Collections.Immutable;
using Splitter.Recipes;

namespace Splitter.Artwork.Sewing;

/// <summary>Which rule of the recipe an element follows.</summary>
internal static class SewRules
{
    /// <summary>The first rule that matches, or null.</summary>
    internal static SewRule? For(DrawnElement element, ImmutableArray<SewRule> rules) =>
        rules.FirstOrDefault(rule => Matches(element, rule.Match));

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
