using Splitter.Geometry;
using static System.FormattableString;

namespace Splitter.Diagnostics;

/// <summary>
/// What is wrong with the lines that rows are to follow: SPL2140 to SPL2149. Lengths are millimetres.
/// </summary>
internal static class GuideProblems
{
    internal static Diagnostic Unknown(Place place, string id) =>
        Diagnostic.Error(
            2140,
            place,
            $"no shape of the artwork is called {Quote.Quoted(id)}; give the line that rows are to follow this "
                + "id, or write it here, as in 'guide: \"LINESTRING (10 90, 50 60, 90 80)\"'"
        );

    internal static Diagnostic NotALine(Place place, string name, string what) =>
        Diagnostic.Error(
            2141,
            place,
            $"{Quote.Quoted(name)} is {what}, and rows follow one open line; draw such a line from one side of "
                + "the shape to the other"
        );

    internal static Diagnostic NotWkt(Place place, string what) =>
        Diagnostic.Error(
            2142,
            place,
            $"this is not well-known text (OGC 06-103r4): {what}; write for example 'LINESTRING (10 90, 50 60, 90 80)'"
        );

    internal static Diagnostic CrossesItself(Place place, Point at) =>
        Diagnostic.Error(
            2143,
            place,
            Invariant($"the guide crosses itself near {Mm(at.X)}, {Mm(at.Y)}, where rows would have two ")
                + "directions; draw it without a loop"
        );

    internal static Diagnostic TooShort(Place place, double length, int least) =>
        Diagnostic.Error(
            2144,
            place,
            Invariant($"the guide is {Mm(length)} mm long, which gives hardly a direction; draw it at ")
                + Invariant($"least {Mm(least)} mm long")
        );

    internal static Diagnostic TooTight(Place place, Point at, double radius, int least) =>
        Diagnostic.Error(
            2145,
            place,
            Invariant($"the guide has a corner near {Mm(at.X)}, {Mm(at.Y)} that its sides leave room to ")
                + Invariant($"round by {Mm(radius)} mm only, and rows need {Mm(least)} mm; draw it gentler, or ")
                + "with longer sides"
        );

    internal static Diagnostic Crowded(Place place, string shape, Point at) =>
        Diagnostic.Error(
            2146,
            place,
            Invariant($"rows of '{shape}' would crowd or cross near {Mm(at.X)}, {Mm(at.Y)}, too far ")
                + "inside a bend of the guide; draw this bend gentler or nearer to that place, or "
                + "divide the shape"
        );

    /// <summary>To the tape's step: where and how much, for the eye.</summary>
    private static double Mm(double micrometres) => Math.Round(micrometres / Units.Millimetre, 1);
}
