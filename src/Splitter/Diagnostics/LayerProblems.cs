using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Stitching.Density;
using static System.FormattableString;

namespace Splitter.Diagnostics;

/// <summary>What there is to say of thread that lies over thread: SPL3030 to SPL3039. Lengths in millimetres.</summary>
internal static class LayerProblems
{
    /// <summary>Shapes that a line names for a spot, and for all others; more would hide what it says.</summary>
    private const int MostNamed = 6;

    /// <param name="spots">The worst first.</param>
    /// <param name="isOverlapAsked">The recipe says how far parts overlap.</param>
    internal static Diagnostic TooManyLayers(
        Drawing drawing,
        Plan plan,
        IReadOnlyList<DenseSpot> spots,
        int limit,
        bool isOverlapAsked
    )
    {
        var worst = spots[0];
        return Warning(
            3030,
            drawing,
            plan,
            spots,
            Invariant(
                $"{Math.Ceiling(worst.Layers * 10) / 10:0.0} layers of thread and {worst.Holes} needle holes lie"
            ),
            worst.Fullest,
            $" ({Reason(worst.Causes[0])})",
            Invariant($"more than {limit} layers on {spots.Sum(s => s.Full)} mm²"),
            Causes(spots),
            LayerAdvice.Of(spots, drawing.IsStitched, isOverlapAsked)
                + "; or raise 'cloth.most-layers' for cloth and needle that bear it"
        );
    }

    /// <param name="spots">The worst first.</param>
    internal static Diagnostic TooManyHoles(Drawing drawing, Plan plan, IReadOnlyList<DenseSpot> spots)
    {
        var worst = spots.MaxBy(s => s.Holes)!;
        return Warning(
            3031,
            drawing,
            plan,
            [worst, .. spots.Where(s => s != worst)],
            Invariant($"{worst.Holes} needle holes lie"),
            worst.MostPierced,
            why: "",
            Invariant($"more than {ThreadGrid.MostHoles}, which may tear the cloth, on ")
                + Invariant($"{spots.Sum(s => s.Pierced)} mm²"),
            causes: "",
            Remedy(ShapesOf(drawing, worst))
        );
    }

    private static Diagnostic Warning(
        int code,
        Drawing drawing,
        Plan plan,
        IReadOnlyList<DenseSpot> spots,
        string what,
        Square where,
        string why,
        string all,
        string causes,
        string remedy
    )
    {
        var (worst, shapes) = (spots[0], ShapesOf(drawing, spots[0]));
        var parts = worst.Hoopings.Select(hooping => plan.Hoopings[hooping].Letter).ToList();
        return Diagnostic.Warning(
            code,
            shapes[^1].Place,
            Invariant($"hoop {plan.Hoop.Name}: {what} on the square millimetre at x {Mm(where.Middle.X)}, y ")
                + Invariant($"{Mm(where.Middle.Y)}{From(shapes)} ({(parts.Count == 1 ? "part" : "parts")} ")
                + $"{string.Join(", ", parts)}) {Where(shapes)}{why}, "
                + $"and {all}{Others(drawing, spots)}{causes}; {remedy}"
        );
    }

    private static List<Shape> ShapesOf(Drawing drawing, DenseSpot spot) =>
        [.. spot.Shapes.Select(shape => drawing.Shapes[shape])];

    private static string Where(List<Shape> shapes) =>
        shapes.Count == 1 ? $"of shape {Named(shapes[0])}" : $"where shapes {Ids(shapes)} lie over each other";

    /// <summary>How many places there are in all, and the shapes of the others.</summary>
    private static string Others(Drawing drawing, IReadOnlyList<DenseSpot> spots)
    {
        if (spots.Count == 1)
            return " there";
        List<Shape> shapes =
        [
            .. spots
                .SelectMany(s => s.Shapes)
                .Distinct()
                .Where(shape => !spots[0].Shapes.Contains(shape))
                .Select(shape => drawing.Shapes[shape]),
        ];
        var more = shapes.Count == 0 ? "" : $", also of {Ids(shapes)}";
        return Invariant($" at {spots.Count} places{more} ('dense' in the manifest lists them)");
    }

    /// <summary>
    /// What is too much by cause, the artwork's and ours apart; nothing where there is but one place.
    /// </summary>
    private static string Causes(IReadOnlyList<DenseSpot> spots)
    {
        if (spots.Count == 1)
            return "";
        var (ours, all) = (new List<string>(), spots.SelectMany(s => s.Causes).ToList());
        foreach (var squares in all.Where(c => !LayerCauses.IsOfArtwork(c)).Order().GroupBy(cause => cause))
            ours.Add(Invariant($"{squares.Count()} {Kind(squares.Key)}"));
        var artwork = Invariant($"the artwork asks for {all.Count(LayerCauses.IsOfArtwork)} mm² of that");
        return ours.Count == 0
            ? "; " + artwork
            : $"; {artwork}, the rest comes of how it is sewn ({string.Join(", ", ours)})";
    }

    private static string Reason(LayerCause cause) =>
        cause switch
        {
            LayerCause.Shapes => "none hides so much of another that it could be cut away",
            LayerCause.Rows => "its rows or columns come together there",
            LayerCause.Overlap => "parts overlap there",
            LayerCause.Travel => "hidden travel lies there as well",
            LayerCause.Underlay => "underlay lies there as well",
            LayerCause.Ties => "the thread is tied there as well",
            _ => throw new InvalidOperationException($"No words are known for {cause}."),
        };

    private static string Kind(LayerCause cause) =>
        cause switch
        {
            LayerCause.Rows => "where rows or columns of one shape come together",
            LayerCause.Overlap => "where parts overlap",
            LayerCause.Travel => "over hidden travel",
            LayerCause.Underlay => "over underlay",
            LayerCause.Ties => "at ties",
            _ => throw new InvalidOperationException($"No words are known for {cause}."),
        };

    private static string Ids(List<Shape> shapes) =>
        string.Join(", ", shapes.Take(MostNamed).Select(Named))
        + (shapes.Count > MostNamed ? Invariant($" and {shapes.Count - MostNamed} more") : "");

    /// <summary>Machines and programs count what is on a tape one by one, moves among the stitches.</summary>
    private static string Named(Shape shape) =>
        shape.Original.IsEmpty
            ? $"'{shape.Id}'"
            : Invariant($"'{shape.Id}' (colour block {shape.Original[0].Block}, from stitch {shape.Place.Column})");

    /// <summary>From where places are measured.</summary>
    private static string From(List<Shape> shapes) =>
        $" mm from the {(shapes[0].Original.IsEmpty ? "artwork" : "design")}'s top left corner";

    /// <summary>Against needle holes.</summary>
    private static string Remedy(List<Shape> shapes) =>
        shapes.Exists(s => !s.Original.IsEmpty) ? "write a smaller 'overlap.width'"
        : shapes.Count == 1 ? "give it less underlay or a wider 'row-spacing'"
        : "draw them apart, leave one out ('as: leave'), or give fills and columns less underlay or a wider "
            + "'row-spacing'";

    private static double Mm(double micrometres) => Math.Round(micrometres / Units.Millimetre, 1);
}
