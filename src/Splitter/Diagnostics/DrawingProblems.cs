using Splitter.Geometry;
using static System.FormattableString;

namespace Splitter.Diagnostics;

/// <summary>
/// What artwork other than SVG has wrong, and what cannot be sewn of any: SPL2100 to SPL2199. Lengths in the messages
/// are millimetres.
/// </summary>
internal static class DrawingProblems
{
    internal static Diagnostic NotReadable(Place place, string path, string why) =>
        Diagnostic.Error(2100, place, $"the artwork '{path}' {why}; correct 'artwork.file', or put the file there");

    internal static Diagnostic NothingToSew(Place place) =>
        Diagnostic.Error(
            2101,
            place,
            "the artwork holds nothing that can be sewn; give it filled shapes or strokes, or relax the rules of 'artwork.sew'"
        );

    internal static Diagnostic NotGeoJson(Place place, string what) =>
        Diagnostic.Error(2110, place, $"this is not GeoJSON (RFC 7946): {what}");

    internal static Diagnostic NoWidth(Place place) =>
        Diagnostic.Error(
            2111,
            place,
            "GeoJSON states no size on cloth; give the finished width, as in 'artwork.width: 260 mm'"
        );

    internal static Diagnostic NotOnEarth(Place place, string feature) =>
        Diagnostic.Error(
            2112,
            place,
            $"feature '{feature}' has coordinates beyond 180 degrees of longitude or 85 of latitude; GeoJSON has degrees in WGS 84 (RFC 7946, section 4); draw plain geometry in 'artwork.shapes'"
        );

    internal static Diagnostic NotAColour(Place place, string feature, string key) =>
        Diagnostic.Error(
            2113,
            place,
            $"property '{key}' of feature '{feature}' is no colour; write six hexadecimal digits, as in \"#1b3a5c\""
        );

    internal static Diagnostic NotAWidth(Place place, string feature) =>
        Diagnostic.Error(
            2114,
            place,
            $"property 'stroke-width' of feature '{feature}' must be a number of millimetres from 0 to 100"
        );

    internal static Diagnostic PointsSkipped(Place place, string shape) =>
        Diagnostic.Warning(
            2115,
            place,
            $"'{shape}' has points, which cannot be sewn and are left out; draw a small circle instead"
        );

    internal static Diagnostic NotWkt(Place place, string what) =>
        Diagnostic.Error(
            2120,
            place,
            $"this is not well-known text (OGC 06-103r4): {what}; write for example 'POLYGON ((0 0, 60 0, 30 40, 0 0))'"
        );

    internal static Diagnostic TooFar(Place place, string shape, double metres) =>
        Diagnostic.Error(
            2121,
            place,
            Invariant(
                $"'{shape}' reaches further than {metres} m from the artwork's corner; coordinates are millimetres"
            )
        );

    internal static Diagnostic NotSatin(Place place, string shape, int widest) =>
        Diagnostic.Warning(
            2130,
            place,
            Invariant(
                $"'{shape}' is to be satin, but no columns of up to {widest / Units.Millimetre} mm cover it; it is filled with rows instead; divide it into narrow shapes, or write 'as: fill'"
            )
        );

    internal static Diagnostic RuleWithoutShape(Place place) =>
        Diagnostic.Warning(
            2133,
            place,
            "no shape of the artwork is what this rule asks for; see how the artwork writes its ids, classes and colours, or take the rule out"
        );

    internal static Diagnostic TooSmall(Place place, string shape) =>
        Diagnostic.Warning(
            2131,
            place,
            $"'{shape}' is too small to sew and is left out; draw it larger, or write 'as: leave'"
        );

    internal static Diagnostic Hidden(Place place, string shape) =>
        Diagnostic.Warning(
            2132,
            place,
            $"'{shape}' lies wholly under later shapes and is left out; move it up in the drawing, or write 'as: leave'"
        );
}
