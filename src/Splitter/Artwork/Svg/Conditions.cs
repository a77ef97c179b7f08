using System.Collections.Immutable;
using System.Xml.Linq;

namespace Splitter.Artwork.Svg;

/// <summary>
/// Conditional processing (SVG 1.1, 5.8), as a reader of English without scripts, motion and extensions.
/// </summary>
internal static class Conditions
{
    /// <summary>Parts of SVG 1.1's feature names that a drawing at rest has no use for.</summary>
    private static readonly ImmutableArray<string> Lacking = ["DOM", "Script", "Animation", "dynamic", "Events"];

    internal static bool Hold(XElement element) =>
        (string?)element.Attribute("requiredExtensions") is null or ""
        && !XmlWords
            .Of((string?)element.Attribute("requiredFeatures"))
            .Any(feature => Lacking.Any(part => feature.Contains(part, StringComparison.Ordinal)))
        && (
            (string?)element.Attribute("systemLanguage") is not { } languages
            || languages
                .Split(',')
                .Select(l => l.Trim())
                .Any(l => l == "en" || l.StartsWith("en-", StringComparison.Ordinal))
        );
}
