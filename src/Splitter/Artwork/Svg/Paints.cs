using System.Xml.Linq;
using Splitter.Artwork.Svg.Css;
using Splitter.Diagnostics;

namespace Splitter.Artwork.Svg;

/// <summary>What a paint comes to with thread: one colour, or nothing.</summary>
internal sealed class Paints(Cascade cascade, References references, Remarks remarks)
{
    /// <summary>Gradients that take their stops from each other; more in a row are a circle.</summary>
    private const int LongestChain = 16;

    /// <returns><c>#rrggbb</c>, or null when nothing is painted.</returns>
    internal string? Of(XElement element, Paint paint, double opacity, Look look)
    {
        var colour = paint switch
        {
            Paint.Flat flat => flat.Colour,
            Paint.Current => look.Color,
            Paint.Server server => Served(element, server, look),
            _ => (Colour?)null,
        };
        if (colour is not { } painted || painted.Alpha * opacity == 0)
            return null;
        if (painted.Alpha * opacity < 1)
            remarks.Add(element, ArtworkProblems.SeeThrough);
        return painted.Hex;
    }

    private Colour? Served(XElement element, Paint.Server server, Look look)
    {
        var instead = server.Fallback switch
        {
            Paint.Flat flat => flat.Colour,
            Paint.Current => look.Color,
            _ => (Colour?)null,
        };
        if (references.Follow(element, server.Reference) is not { } target)
            return instead;
        switch (target.Name.LocalName)
        {
            case "linearGradient" or "radialGradient":
                if (FirstColour(target) is not { } first)
                    return null;
                remarks.Add(element, (place, what) => ArtworkProblems.Gradient(place, what, first.Hex));
                return first with { Alpha = 1 };
            case "pattern":
                remarks.Add(
                    element,
                    (place, what) =>
                        ArtworkProblems.Pattern(place, what, instead is { } i ? $"sewn in {i.Hex}" : "left out")
                );
                return instead;
            default:
                remarks.Add(
                    element,
                    (place, what) => ArtworkProblems.WrongKind(place, what, server.Reference, target.Name.LocalName)
                );
                return instead;
        }
    }

    /// <summary>The first stop that shows, of the gradient or of the one it refers to.</summary>
    private Colour? FirstColour(XElement gradient)
    {
        for (var i = 0; i < LongestChain; i++)
        {
            var stops = gradient.Elements().Where(e => SvgDocument.IsSvg(e) && e.Name.LocalName == "stop").ToList();
            if (stops.Count > 0)
                return stops.Select(Stop).FirstOrDefault(c => c is { Alpha: > 0 });
            if (
                SvgDocument.Href(gradient) is not { } reference
                || references.Follow(gradient, reference) is not { } next
            )
                return null;
            gradient = next;
        }
        return null;
    }

    private Colour? Stop(XElement stop)
    {
        var own = cascade.Of(stop);
        var written = own["stop-color"];
        // Not inherited by itself; a stop may still ask for its gradient's colour.
        for (var above = stop.Parent; written == "inherit"; above = above?.Parent)
            written = above is null ? null : cascade.Of(above)["stop-color"];
        var colour = written switch
        {
            null => new("#000000", 1),
            var text when text.Equals("currentColor", StringComparison.OrdinalIgnoreCase) => Current(stop),
            var text => Colours.Read(text),
        };
        if (colour is null)
            remarks.Add(stop, (place, what) => ArtworkProblems.BadValue(place, what, "stop-color", written ?? ""));
        var opacity = own["stop-opacity"] is { } share ? LookReader.ReadShare(share) ?? 1 : 1;
        return colour is { } c ? c with { Alpha = c.Alpha * opacity } : null;
    }

    private Colour Current(XElement element) =>
        element
            .AncestorsAndSelf()
            .Select(e => cascade.Of(e)["color"] is { } text ? Colours.Read(text) : null)
            .FirstOrDefault(c => c is not null)
        ?? Look.Initial.Color;
}
