using System.Xml.Linq;
using Splitter.Artwork.Svg.Css;
using Splitter.Diagnostics;

namespace Splitter.Artwork.Svg;

/// <summary>The lengths that an element states, in user units.</summary>
internal sealed class ElementLengths(XElement element, Declarations own, Spot viewport, Remarks remarks)
{
    internal Spot Viewport => viewport;

    internal double Diagonal => viewport.Length / Math.Sqrt(2);

    internal double Across(string property) => Read(property, viewport.X) ?? 0;

    internal double Down(string property) => Read(property, viewport.Y) ?? 0;

    /// <summary>Null when the element does not state it, or states it wrong.</summary>
    internal double? Read(string property, double whole)
    {
        if (own[property] is not { Length: > 0 } text || text == "auto")
            return null;
        var length = Lengths.Read(text, whole);
        if (length is null)
            remarks.Add(element, (place, what) => ArtworkProblems.BadValue(place, what, property, text));
        return length;
    }

    internal double? NotNegative(string property, double whole)
    {
        if (Read(property, whole) is not { } length)
            return null;
        if (length >= 0)
            return length;
        remarks.Add(element, (place, what) => ArtworkProblems.Negative(place, what, property));
        return null;
    }
}
