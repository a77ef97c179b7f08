using Splitter.Geometry;
using Splitter.Recipes;
using Splitter.Recipes.Language;
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
            "the artwork holds nothing that can be sewn; give it filled shapes or strokes, or relax the rules "
                + "of 'artwork.sew'"
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
            $"feature '{feature}' has coordinates beyond 180 degrees of longitude or 85 of latitude; GeoJSON "
                + "has degrees in WGS 84 (RFC 7946, section 4); draw plain geometry in 'artwork.shapes'"
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

    internal static Diagnostic TooTangled(Place place, string shape) =>
        Diagnostic.Error(2122, place, $"'{shape}' crosses itself far too often; simplify it");

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
            Invariant($"'{shape}' is to be satin, but no columns of up to {widest / Units.Millimetre} mm ")
                + "cover it; it is filled with rows instead; divide it into narrow shapes, or write "
                + "'as: fill'"
        );

    /// <param name="near">The artwork's own id or class that is most like the one asked for; null for none.</param>
    internal static Diagnostic RuleWithoutShape(Place place, SewMatch match, string? near) =>
        Diagnostic.Warning(
            2133,
            place,
            $"no shape of the artwork has {Words.List(Asked(match), "and")}; "
                + (
                    near is null
                        ? "see how the artwork writes its ids, classes and colours, or take the rule out"
                        : $"did you mean {Quote.Quoted(near)}?"
                )
        );

    /// <summary>All that a rule asks for, as the recipe writes it.</summary>
    private static IEnumerable<string> Asked(SewMatch match)
    {
        if (match.Id is { } id)
            yield return $"id {Quote.Quoted(id)}";
        if (match.Class is { } name)
            yield return $"class {Quote.Quoted(name)}";
        if (match.Fill is { } fill)
            yield return $"fill {fill}";
        if (match.Stroke is { } stroke)
            yield return $"stroke {stroke}";
        if (match.StrokeWidth is { } bound)
            yield return Invariant($"a stroke-width {bound.Operator} {Units.ToMillimetres(bound.Length)} mm");
    }

    /// <param name="drawn">A colour of the artwork that no thread of the recipe has.</param>
    internal static Diagnostic ThreadNearlyDrawn(Place place, string name, string colour, string drawn) =>
        Diagnostic.Warning(
            2134,
            place,
            $"nothing is drawn in {colour}, the colour of thread {Quote.Quoted(name)}, while {drawn}, which is "
                + $"much like it, has no thread; write \"{drawn}\" if this thread is for it"
        );

    /// <param name="drawn">Colours of the artwork that no thread of the recipe has, nor nearly.</param>
    internal static Diagnostic ColoursWithoutThread(Place place, IReadOnlyCollection<string> drawn) =>
        Diagnostic.Warning(
            2135,
            place,
            $"no thread of your list has the colour {Words.List(drawn, "or")}, and the artwork is drawn in it; add the "
                + "spool, with exactly that colour"
        );

    internal static Diagnostic TooManyStitches(Place place, double stitches, int most) =>
        Diagnostic.Error(
            2137,
            place,
            Invariant($"fills alone take {stitches / 1e6:0.0} million stitches, more than the {most / 1e6:0} million ")
                + "that are made at most; make the work smaller, or write a larger 'row-spacing' "
                + "under 'artwork.sew'"
        );

    /// <param name="leave">How the recipe leaves it on purpose; null where it cannot alone.</param>
    internal static Diagnostic TooSmall(Place place, string shape, string? leave) =>
        Diagnostic.Warning(
            2131,
            place,
            $"'{shape}' is too small to sew and is left out; draw it larger, or {leave ?? TakeOut}"
        );

    /// <param name="leave">How the recipe leaves it on purpose; null where it cannot alone.</param>
    internal static Diagnostic Hidden(Place place, string shape, string? leave) =>
        Diagnostic.Warning(
            2132,
            place,
            $"'{shape}' lies wholly under later shapes and is left out; move it up in the drawing, or "
                + $"{leave ?? TakeOut}"
        );

    /// <param name="leave">How the recipe leaves it on purpose; null where it cannot alone.</param>
    internal static Diagnostic HardlyShows(Place place, string shape, string? leave) =>
        Diagnostic.Warning(
            2136,
            place,
            $"of '{shape}' later shapes leave only strips narrower than 0.3 mm, too narrow to sew, and it is left out; "
                + $"let more of it show, or {leave ?? TakeOut}"
        );

    /// <param name="others">How many more of this thread.</param>
    internal static Diagnostic LikeCloth(Place place, string shape, int others, string thread, string cloth) =>
        Diagnostic.Warning(
            2138,
            place,
            Invariant(
                $"'{shape}'{(others == 0 ? " is" : $" and {others} more of its thread are")} sewn in {thread} on "
            )
                + $"cloth of {cloth}, nearly the same colour, and hardly seen; choose another thread, or correct "
                + "'cloth.color'"
        );

    internal static Diagnostic TenthOfDrawing(Place place, double width, double stated) =>
        Diagnostic.Warning(
            2139,
            place,
            Invariant($"the work comes out {width:0.#} mm wide, a tenth of what the drawing states; ")
                + "areas that come out too small to sew are left out; "
                + Invariant($"if that is not meant, write '{stated:0.#} mm' here, or nothing")
        );

    /// <param name="fine">Of so many areas.</param>
    internal static Diagnostic TinyWork(Place place, int fine, int areas, double width, double height) =>
        Diagnostic.Warning(
            2139,
            place,
            Invariant(
                $"the work comes out {width:0.#} x {height:0.#} mm, and {fine} of its {areas} areas are finer than "
            )
                + "thread (0.4 mm) everywhere; those too small to sew are left out; give the finished width in "
                + "'artwork.width', as in '420 mm'"
        );

    private const string TakeOut = "take it out of the drawing";
}
