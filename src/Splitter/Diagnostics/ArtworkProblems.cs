using System.Collections.Immutable;
using Splitter.Geometry;
using static System.FormattableString;

namespace Splitter.Diagnostics;

/// <summary>
/// What reading an SVG drawing has to say: SPL2001 to SPL2019 the file as a whole, from SPL2020 what is not sewn, from
/// SPL2040 references, from SPL2060 values. <c>what</c> names an element, with its id where it has one.
/// </summary>
internal static class ArtworkProblems
{
    /// <summary>More remarks than a person reads at once; a drawing full of text would give thousands.</summary>
    private const int Most = 100;

    /// <summary>Sorted, errors kept, warnings bounded in number.</summary>
    internal static ImmutableArray<Diagnostic> Foremost(IEnumerable<Diagnostic> problems)
    {
        var sorted = problems.Sorted();
        if (sorted.Length <= Most)
            return sorted;
        return
        [
            .. sorted.Where(d => d.Severity == Severity.Error),
            .. sorted.Where(d => d.Severity == Severity.Warning).Take(Most),
            Diagnostic.Warning(
                2019,
                Place.Whole(sorted[0].Place.File),
                Invariant($"the drawing gets more remarks than the {Most} shown; correct those first")
            ),
        ];
    }

    internal static Diagnostic FileTooLarge(string file, int bytes, int most) =>
        Error(
            2001,
            Place.Whole(file),
            Invariant($"the drawing has {bytes} bytes, more than the {most} that are read; simplify it")
        );

    internal static Diagnostic NotXml(Place place, string message) =>
        Error(2002, place, $"this is not well-formed XML: {message}; save the drawing again as plain SVG");

    internal static Diagnostic Compressed(string file) =>
        Error(2003, Place.Whole(file), "the drawing is compressed; save it as plain SVG, not as .svgz");

    internal static Diagnostic NotSvg(Place place, string name) =>
        Error(
            2004,
            place,
            $"the outermost element is '{Quote.Short(name)}', not 'svg' of SVG; begin the drawing with <svg "
                + "xmlns=\"http://www.w3.org/2000/svg\">"
        );

    internal static Diagnostic TooDeep(Place place, int most) =>
        Error(2005, place, Invariant($"elements are nested more than {most} deep; ungroup some of them"));

    internal static Diagnostic NoSize(Place place) =>
        Error(2006, place, "the drawing states no size; give its svg element width and height, or a viewBox");

    internal static Diagnostic BadSize(Place place, double width, double height, int most) =>
        Error(
            2007,
            place,
            Invariant($"the drawing would be {Math.Round(width, 3)} x {Math.Round(height, 3)} mm; its ")
                + Invariant($"sides must be from 0.1 to {most} mm, so correct its width, height or viewBox")
        );

    internal static Diagnostic TooManyElements(Place place, int most) =>
        Error(
            2008,
            place,
            Invariant(
                $"with its copies (use) the drawing comes to more than {most} elements; take out copies of copies"
            )
        );

    internal static Diagnostic TooManyPoints(Place place, int most) =>
        Error(2009, place, Invariant($"the drawing's outlines come to more than {most} points; simplify them"));

    internal static Diagnostic Nothing(Place place) =>
        Warning(2010, place, "the drawing paints nothing; fill or stroke its shapes");

    internal static Diagnostic Text(Place place, string what) =>
        Warning(2020, place, $"{what} is not sewn, since text looks different with every font; turn it into outlines");

    internal static Diagnostic Image(Place place, string what) =>
        Warning(2021, place, $"{what} is not sewn: a picture of pixels has no shapes; trace it into paths");

    internal static Diagnostic Effect(Place place, string what, string property) =>
        Warning(
            2022,
            place,
            $"{what} is sewn without its {property}, which thread cannot show; take it out, or draw its outcome "
                + "as shapes"
        );

    internal static Diagnostic Pattern(Place place, string what, string instead) =>
        Warning(2023, place, $"{what} has a pattern, which is not sewn; it is {instead}; draw the pattern as shapes");

    internal static Diagnostic Gradient(Place place, string what, string colour) =>
        Warning(
            2024,
            place,
            $"{what} has a gradient and is sewn in its first colour, {colour}; give it one colour, or divide it "
                + "into shapes of one colour each"
        );

    internal static Diagnostic SeeThrough(Place place, string what) =>
        Warning(2025, place, $"{what} is partly transparent and is sewn opaque; take out the opacity");

    internal static Diagnostic Animation(Place place, string what) =>
        Warning(2026, place, $"{what} is left out: the drawing is sewn as it stands before it moves; take it out");

    internal static Diagnostic NotDrawn(Place place, string what) =>
        Warning(2027, place, $"{what} is not sewn; draw what it shows as paths");

    internal static Diagnostic OwnWay(Place place, string what, string property) =>
        Warning(2028, place, $"{what} is sewn without its {property}; draw it so that it looks right without");

    internal static Diagnostic InClip(Place place, string what) =>
        Warning(2029, place, $"{what} does not belong in a clip path and is left out; put shapes there");

    internal static Diagnostic External(Place place, string what, string reference) =>
        Warning(
            2040,
            place,
            $"{what} refers to '{Quote.Short(reference)}', outside this file, which is never followed; copy it "
                + "into the drawing"
        );

    internal static Diagnostic Missing(Place place, string what, string reference) =>
        Warning(
            2041,
            place,
            $"{what} refers to '{Quote.Short(reference)}', which is not in the drawing; correct the name"
        );

    internal static Diagnostic WrongKind(Place place, string what, string reference, string kind) =>
        Warning(2042, place, $"{what} refers to '{Quote.Short(reference)}', which is a {kind}; name one that fits");

    internal static Diagnostic Circle(Place place, string what, string reference) =>
        Warning(
            2043,
            place,
            $"{what} refers to '{Quote.Short(reference)}', which leads back to it, and is left out; break the circle"
        );

    internal static Diagnostic TwiceNamed(Place place, string what, string id) =>
        Warning(
            2044,
            place,
            $"{what} refers to '{Quote.Short(id)}', and several elements have this id; the first counts"
        );

    internal static Diagnostic CssNotRead(Place place, string text) =>
        Warning(
            2045,
            place,
            $"the style sheet's '{Quote.Short(text)}' is not read; use types, ids, classes and attributes to "
                + "select, and write the rest on the elements"
        );

    internal static Diagnostic BadPath(Place place, string what, int at, string near) =>
        Warning(
            2060,
            place,
            Invariant($"the path data of {what} has a mistake at character {at}, near ")
                + Invariant($"'{Quote.Short(near)}'; it is drawn up to there, so correct it")
        );

    internal static Diagnostic BadPoints(Place place, string what) =>
        Warning(2061, place, $"the points of {what} have a mistake; it is drawn up to there, so correct it");

    internal static Diagnostic BadValue(Place place, string what, string property, string value) =>
        Warning(
            2062,
            place,
            $"{what} has {property} '{Quote.Short(value)}', which cannot be read and is ignored; correct it"
        );

    internal static Diagnostic Negative(Place place, string what, string property) =>
        Warning(2063, place, $"{what} has a negative {property}, and is drawn as if it had none; correct it");

    internal static Diagnostic EmptyViewBox(Place place, string what) =>
        Warning(2064, place, $"{what} has a viewBox without area, so nothing of it is drawn; correct it");

    internal static Diagnostic OutsideSheet(Place place, string what) =>
        Warning(
            2065,
            place,
            $"{what} lies wholly outside the drawing's sheet; it is kept, so delete it or enlarge the sheet"
        );

    internal static Diagnostic TooFar(Place place, string what, int most) =>
        Warning(
            2066,
            place,
            Invariant($"{what} reaches more than {most} m from the drawing and is left out; correct its coordinates")
        );

    internal static Diagnostic TooManyDashes(Place place, string what) =>
        Warning(2067, place, $"{what} has far too many dashes and is drawn without; lengthen them");

    internal static Diagnostic TooTangled(Place place, string what) =>
        Warning(2068, place, $"{what} crosses itself far too often and is left out; simplify it");

    /// <param name="why">What the drawing says, in place of a width.</param>
    internal static Diagnostic WidthGuessed(Place place, int width, string why) =>
        Warning(
            2069,
            place,
            $"{why}; the recipe says "
                + Invariant(
                    $"{Units.ToMillimetres(width):0.#} mm wide: look at 'width' in it before you plan, or give "
                )
                + "'--width'"
        );

    private static Diagnostic Error(int code, Place place, string message) => Diagnostic.Error(code, place, message);

    private static Diagnostic Warning(int code, Place place, string message) =>
        Diagnostic.Warning(code, place, message);
}
