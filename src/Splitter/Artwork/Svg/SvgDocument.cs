using System.Xml;
using System.Xml.Linq;
using Splitter.Diagnostics;

namespace Splitter.Artwork.Svg;

/// <summary>The parsed file: its elements by id, and where they stand.</summary>
internal sealed class SvgDocument
{
    internal const string Namespace = "http://www.w3.org/2000/svg";

    private const string XLink = "http://www.w3.org/1999/xlink";

    private readonly Dictionary<string, XElement> byId = new(StringComparer.Ordinal);
    private readonly HashSet<string> repeated = new(StringComparer.Ordinal);

    internal SvgDocument(string file, XDocument xml)
    {
        File = file;
        Xml = xml;
        Root = xml.Root!;
        foreach (var element in Root.DescendantsAndSelf())
            if ((string?)element.Attribute("id") is { Length: > 0 } id && !byId.TryAdd(id, element))
                repeated.Add(id);
    }

    internal string File { get; }

    internal XDocument Xml { get; }

    internal XElement Root { get; }

    internal static bool IsSvg(XElement element) => element.Name.NamespaceName == Namespace;

    internal XElement? Find(string id) => byId.GetValueOrDefault(id);

    internal bool IsRepeated(string id) => repeated.Contains(id);

    /// <summary>Where the element's opening bracket stands.</summary>
    internal Place PlaceOf(XObject node) =>
        node is IXmlLineInfo info && info.HasLineInfo()
            ? new(File, info.LineNumber, Math.Max(1, info.LinePosition - (node is XElement ? 1 : 0)))
            : Place.Whole(File);

    /// <summary>The element as messages call it.</summary>
    internal static string Label(XElement element) =>
        (string?)element.Attribute("id") is { Length: > 0 } id
            ? $"{element.Name.LocalName} '{(id.Length > 40 ? id[..40] : id)}'"
            : element.Name.LocalName;

    /// <summary>SVG 2's plain <c>href</c> counts before SVG 1.1's <c>xlink:href</c>.</summary>
    internal static string? Href(XElement element) =>
        ((string?)element.Attribute("href") ?? (string?)element.Attribute(XName.Get("href", XLink)))?.Trim();
}
