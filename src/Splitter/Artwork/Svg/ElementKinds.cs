using System.Xml.Linq;
using Splitter.Artwork.Svg.Paths;
using Splitter.Diagnostics;

namespace Splitter.Artwork.Svg;

internal enum ElementKind
{
    /// <summary>It has children that are drawn.</summary>
    Group,

    /// <summary>It is drawn itself.</summary>
    Shape,

    /// <summary>It draws nothing where it stands.</summary>
    Silent,

    /// <summary>It shows something that is not sewn.</summary>
    Reported,
}

/// <summary>What the elements of SVG are to us.</summary>
internal static class ElementKinds
{
    internal static ElementKind Of(string name) =>
        name switch
        {
            "svg" or "g" or "a" or "switch" => ElementKind.Group,
            "use" => ElementKind.Shape,
            _ when ShapeReader.IsShape(name) => ElementKind.Shape,
            "defs" or "title" or "desc" or "metadata" or "style" or "symbol" or "view" or "cursor" =>
                ElementKind.Silent,
            "clipPath" or "linearGradient" or "radialGradient" or "stop" or "pattern" => ElementKind.Silent,
            "marker" or "filter" or "mask" or "font" or "font-face" or "color-profile" or "discard" =>
                ElementKind.Silent,
            _ => ElementKind.Reported,
        };

    internal static bool IsAnimation(string name) =>
        name is "animate" or "animateTransform" or "animateMotion" or "animateColor" or "set";

    internal static Func<Place, string, Diagnostic> Remark(XElement element) =>
        element.Name.LocalName switch
        {
            "text" => ArtworkProblems.Text,
            "image" => ArtworkProblems.Image,
            var name when IsAnimation(name) => ArtworkProblems.Animation,
            _ => ArtworkProblems.NotDrawn,
        };
}
