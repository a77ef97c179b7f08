using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Recipes;
using Splitter.Stitching.Density;
using static System.FormattableString;

namespace Splitter.Diagnostics;

/// <summary>What there is to say of thread that lies over thread: SPL3030 to SPL3039. Lengths in millimetres.</summary>
internal static class LayerProblems
{
    /// <summary>Shapes that a line names; more would hide what it says.</summary>
    private const int MostNamed = 6;

    /// <param name="more">Spots of other shapes that are not told by themselves.</param>
    /// <param name="isOverlapAsked">The recipe says how far parts overlap.</param>
    internal static Diagnostic TooManyLayers(
        ImmutableArray<Shape> shapes,
        ImmutableArray<string> parts,
        FullSpot spot,
        int limit,
        ImmutableArray<FullSpot> more,
        Hoop hoop,
        bool isOverlapAsked
    ) =>
        Diagnostic.Warning(
            3030,
            shapes[^1].Place,
            Invariant($"hoop {hoop.Name}: {spot.Layers:0.0} layers of thread and {spot.Holes} needle ")
                + Invariant($"holes lie on the square millimetre at x {Mm(spot.Fullest.Middle.X)}, y ")
                + Invariant($"{Mm(spot.Fullest.Middle.Y)}{From(shapes)} ({(parts.Length == 1 ? "part" : "parts")} ")
                + Invariant($"{string.Join(", ", parts)}), and more than {limit} layers on {spot.Squares} mm² ")
                + Invariant($"{Where(shapes)}{And(more)}; {Remedy(shapes, isOverlapAsked && parts.Length > 1)}, ")
                + "or raise 'cloth.most-layers' for cloth and needle that bear it"
        );

    /// <param name="more">Spots of other shapes that are not told by themselves.</param>
    internal static Diagnostic TooManyHoles(
        ImmutableArray<Shape> shapes,
        ImmutableArray<string> parts,
        PiercedSpot spot,
        ImmutableArray<PiercedSpot> more,
        Hoop hoop
    ) =>
        Diagnostic.Warning(
            3031,
            shapes[^1].Place,
            Invariant($"hoop {hoop.Name}: {spot.Holes} needle holes lie on the square millimetre at x ")
                + Invariant($"{Mm(spot.Fullest.Middle.X)}, y {Mm(spot.Fullest.Middle.Y)}{From(shapes)} ")
                + Invariant($"({(parts.Length == 1 ? "part" : "parts")} {string.Join(", ", parts)}), and more ")
                + Invariant($"than {ThreadGrid.MostHoles}, which may tear the cloth, on {spot.Squares} mm² ")
                + Invariant($"{Where(shapes)}{And(more)}; {Remedy(shapes, isOverlap: false)}")
        );

    private static string And(ImmutableArray<PiercedSpot> more) => And(more.Length, more.Sum(s => s.Squares));

    private static string Where(ImmutableArray<Shape> shapes) =>
        shapes.Length == 1
            ? $"of shape {Named(shapes[0])}"
            : "where shapes "
                + string.Join(", ", shapes.Take(MostNamed).Select(Named))
                + (shapes.Length > MostNamed ? Invariant($" and {shapes.Length - MostNamed} more") : "")
                + " lie over each other";

    /// <summary>Machines and programs count what is on a tape one by one, moves among the stitches.</summary>
    private static string Named(Shape shape) =>
        shape.Original.IsEmpty
            ? $"'{shape.Id}'"
            : Invariant($"'{shape.Id}' (colour block {shape.Original[0].Block}, from stitch {shape.Place.Column})");

    /// <summary>A drawing is measured in the program that draws it; a tape is looked at on a screen or as cloth.</summary>
    private static string From(ImmutableArray<Shape> shapes) =>
        shapes[0].Original.IsEmpty ? "" : " mm from the design's top left corner";

    /// <param name="isOverlap">Parts meet there, and the recipe says how far they overlap.</param>
    private static string Remedy(ImmutableArray<Shape> shapes, bool isOverlap) =>
        shapes.Any(s => !s.Original.IsEmpty) ? "write a smaller 'overlap.width'"
        : isOverlap ? "write a smaller 'overlap.width', or leave it out"
        : shapes.Length == 1 ? "give it less underlay or a wider 'row-spacing'"
        : "draw them apart, leave one out ('as: leave'), or give fills and columns less underlay or a wider "
            + "'row-spacing'";

    private static string And(ImmutableArray<FullSpot> more) => And(more.Length, more.Sum(s => s.Squares));

    private static string And(int sets, int squares) =>
        sets == 0
            ? ""
            : Invariant($" (so do {sets} more {(sets == 1 ? "set" : "sets")} of shapes, on {squares} mm² in ")
                + "all, which are not told)";

    private static double Mm(double micrometres) => Math.Round(micrometres / Units.Millimetre, 1);
}
