using System.Collections.Immutable;
using System.Xml.Linq;
using Splitter.Artwork.Svg.Css;
using Splitter.Diagnostics;
using Splitter.Geometry;

namespace Splitter.Artwork.Svg;

/// <summary>
/// An element's own values over what it inherits (SVG 1.1, appendix N: initial values and inheritance).
/// </summary>
internal sealed class LookReader(Remarks remarks)
{
    /// <summary>What thread cannot show, by property: the shape is drawn without.</summary>
    private static readonly ImmutableArray<string> Effects = ["filter", "mask"];

    private static readonly ImmutableArray<string> Markers = ["marker", "marker-start", "marker-mid", "marker-end"];

    /// <param name="diagonal">What 100 % of a stroke's width is.</param>
    internal Look Read(XElement element, Declarations own, Look parent, double diagonal)
    {
        var value = new Values(element, own, remarks);
        return new()
        {
            Color = value.Of(
                "color",
                parent.Color,
                Look.Initial.Color,
                t => t.Equals("currentColor", StringComparison.OrdinalIgnoreCase) ? parent.Color : Colours.Read(t)
            ),
            Fill = value.Of("fill", parent.Fill, Look.Initial.Fill, ReadPaint),
            Stroke = value.Of("stroke", parent.Stroke, Look.Initial.Stroke, ReadPaint),
            FillRule = value.Of("fill-rule", parent.FillRule, default, ReadRule),
            ClipRule = value.Of("clip-rule", parent.ClipRule, default, ReadRule),
            StrokeWidth = value.Of("stroke-width", parent.StrokeWidth, 1, t => NotNegative(Lengths.Read(t, diagonal))),
            Cap = value.Of("stroke-linecap", parent.Cap, Cap.Butt, ReadCap),
            Join = value.Of("stroke-linejoin", parent.Join, Join.Mitre, ReadJoin),
            MitreLimit = value.Of(
                "stroke-miterlimit",
                parent.MitreLimit,
                4,
                t => Lengths.Read(t, double.NaN) is { } m && m >= 1 ? m : null
            ),
            Dashes = value.Of("stroke-dasharray", parent.Dashes, [], t => ReadDashes(t, diagonal)),
            DashOffset = value.Of("stroke-dashoffset", parent.DashOffset, 0, t => Lengths.Read(t, diagonal)),
            FillOpacity = value.Of("fill-opacity", parent.FillOpacity, 1, ReadShare),
            StrokeOpacity = value.Of("stroke-opacity", parent.StrokeOpacity, 1, ReadShare),
            Visible = value.Of("visibility", parent.Visible, defaultValue: true, t => t == "visible"),
            Marked = Markers.Any(m =>
                own[m] is { } text ? text.StartsWith("url(", StringComparison.Ordinal) : parent.Marked
            ),
            Opacity = value.Of("opacity", 1, 1, ReadShare, parent.Opacity),
            Displayed = value.Of("display", inherited: true, defaultValue: true, t => t != "none"),
            Overflows = value.Of("overflow", inherited: false, defaultValue: false, t => t is "visible" or "auto"),
            ClipPath = own["clip-path"] is { } clip && clip != "none" ? clip : null,
        };
    }

    /// <summary>What the element asks for that is left away when it is painted.</summary>
    internal void Remark(XElement element, Declarations own, Look look)
    {
        foreach (var effect in Effects)
            if (own[effect] is { Length: > 0 } value && value != "none" && value != "inherit")
                remarks.Add(element, (place, what) => ArtworkProblems.Effect(place, what, effect));
        if (own["vector-effect"] is { Length: > 0 } vector && vector is not ("none" or "inherit"))
            remarks.Add(element, (place, what) => ArtworkProblems.OwnWay(place, what, "vector-effect"));
        if (
            own["paint-order"] is { Length: > 0 } order
            && order is not ("normal" or "inherit")
            && !order.StartsWith("fill", StringComparison.Ordinal)
        )
            remarks.Add(element, (place, what) => ArtworkProblems.OwnWay(place, what, "paint-order"));
        if (own["transform-origin"] is { Length: > 0 } && own["transform"] is not null)
            remarks.Add(element, (place, what) => ArtworkProblems.OwnWay(place, what, "transform-origin"));
        if (look.Opacity is > 0 and < 1)
            remarks.Add(element, ArtworkProblems.SeeThrough);
    }

    internal static Paint? ReadPaint(string text)
    {
        if (References.Url(text) is { } url)
            return new Paint.Server(
                url.Reference,
                url.Fallback.Length == 0 ? null : ReadPaint(url.Fallback) ?? new Paint.None()
            );
        return text.ToLowerInvariant() switch
        {
            "none" => new Paint.None(),
            "currentcolor" => new Paint.Current(),
            _ => Colours.Read(text) is { } colour ? new Paint.Flat(colour) : null,
        };
    }

    internal static double? ReadShare(string text) =>
        Lengths.Read(text, 1) is { } share ? Math.Clamp(share, 0, 1) : null;

    private static double? NotNegative(double? length) => length >= 0 ? length : null;

    private static FillRule? ReadRule(string text) =>
        text switch
        {
            "nonzero" => FillRule.NonZero,
            "evenodd" => FillRule.EvenOdd,
            _ => null,
        };

    private static Cap? ReadCap(string text) =>
        text switch
        {
            "butt" => Cap.Butt,
            "round" => Cap.Round,
            "square" => Cap.Square,
            _ => null,
        };

    private static Join? ReadJoin(string text) =>
        text switch
        {
            // SVG 2's two new joins may be drawn as a mitre where they are not known.
            "miter" or "miter-clip" or "arcs" => Join.Mitre,
            "round" => Join.Round,
            "bevel" => Join.Bevel,
            _ => null,
        };

    private static ImmutableArray<double>? ReadDashes(string text, double diagonal)
    {
        if (text == "none")
            return [];
        if (Lengths.ReadList(text, diagonal) is not { Count: > 0 } list || list.Any(d => !(d >= 0)))
            return null;
        if (list.Sum() == 0)
            return [];
        return list.Count % 2 == 0 ? [.. list] : [.. list, .. list];
    }

    /// <summary>One element's values, each with CSS's words for "as the parent" and "as if not set".</summary>
    private sealed class Values(XElement element, Declarations own, Remarks remarks)
    {
        internal T Of<T>(string property, T inherited, T defaultValue, Func<string, T?> read, T? parent = null)
            where T : struct =>
            Of(
                property,
                inherited,
                defaultValue,
                t => read(t) is { } v ? (true, v) : (false, default),
                parent ?? inherited
            );

        internal Paint Of(string property, Paint inherited, Paint defaultValue, Func<string, Paint?> read) =>
            Of(property, inherited, defaultValue, t => read(t) is { } v ? (true, v) : (false, inherited), inherited);

        private T Of<T>(string property, T inherited, T defaultValue, Func<string, (bool Ok, T Value)> read, T parent)
        {
            switch (own[property])
            {
                case null or "unset" or "revert":
                    return inherited;
                case "inherit":
                    return parent;
                case "initial":
                    return defaultValue;
                case { } text:
                    var (ok, value) = read(text);
                    if (!ok)
                        remarks.Add(element, (place, what) => ArtworkProblems.BadValue(place, what, property, text));
                    return ok ? value : inherited;
            }
        }
    }
}
