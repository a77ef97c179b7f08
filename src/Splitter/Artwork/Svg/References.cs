using System.Xml.Linq;
using Splitter.Diagnostics;

namespace Splitter.Artwork.Svg;

/// <summary>References within the file; all others are reported and never followed.</summary>
internal sealed class References(SvgDocument document, Remarks remarks)
{
    /// <summary>The element that a <c>#name</c> names.</summary>
    internal XElement? Follow(XElement from, string reference)
    {
        if (!reference.StartsWith('#'))
        {
            remarks.Add(from, (place, what) => ArtworkProblems.External(place, what, reference));
            return null;
        }
        var id = reference[1..];
        var found = document.Find(id);
        if (found is null)
            remarks.Add(from, (place, what) => ArtworkProblems.Missing(place, what, reference));
        else if (document.IsRepeated(id))
            remarks.Add(from, (place, what) => ArtworkProblems.TwiceNamed(place, what, id));
        return found;
    }

    /// <summary>What stands in a CSS <c>url()</c>, and what follows it; null when it is none.</summary>
    internal static (string Reference, string Fallback)? Url(string value)
    {
        if (!value.StartsWith("url(", StringComparison.OrdinalIgnoreCase))
            return null;
        var end = value.IndexOf(')', StringComparison.Ordinal);
        return end < 0 ? null : (value[4..end].Trim().Trim('"', '\'').Trim(), value[(end + 1)..].Trim());
    }
}
