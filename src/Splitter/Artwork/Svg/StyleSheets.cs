using System.Xml.Linq;
using Splitter.Artwork.Svg.Css;
using Splitter.Diagnostics;

namespace Splitter.Artwork.Svg;

/// <summary>The drawing's own style sheets in document order; those outside it are reported and not fetched.</summary>
internal static class StyleSheets
{
    internal static List<Rule> Read(SvgDocument document, Remarks remarks)
    {
        foreach (
            var sheet in document.Xml.Nodes().OfType<XProcessingInstruction>().Where(p => p.Target == "xml-stylesheet")
        )
            remarks.Add(ArtworkProblems.External(document.PlaceOf(sheet), "the style sheet", sheet.Data));
        XElement at = document.Root;
        var reader = new CssReader(text =>
            remarks.Add(
                at,
                (place, what) =>
                    text.StartsWith("@import", StringComparison.Ordinal)
                        ? ArtworkProblems.External(place, what, text[7..].Trim())
                        : ArtworkProblems.CssNotRead(place, text)
            )
        );
        foreach (var style in document.Root.Descendants(XName.Get("style", SvgDocument.Namespace)))
        {
            at = style;
            if ((string?)style.Attribute("type") is null or "" or "text/css")
                reader.Read(style.Value);
        }
        return reader.Rules;
    }
}
