using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Stitching.Density;
using static System.FormattableString;

namespace Splitter.Diagnostics;

/// <summary>What there is to say of thread that lies over thread: SPL3030 to SPL3039. Lengths in millimetres.</summary>
internal static class LayerProblems
{
    /// <summary>Letters of parts that a line names; more would hide what it says.</summary>
    private const int MostParts = 5;

    /// <summary>Longest name of a shape that is written out; an artwork may have any.</summary>
    private const int LongestName = 24;

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
        var chief = LayerCauses.Chief(spots);
        var mostly = spots.SelectMany(s => s.Causes).All(cause => cause == chief) ? "" : "mostly ";
        return Warning(
            3030,
            drawing,
            plan,
            (worst, worst.Fullest),
            Invariant($"more than {limit} layers of thread on {spots.Sum(s => s.Full) * Quarter.Area:0.##} mm² at ")
                + Invariant($"{Places(spots.Count)}, ")
                + mostly
                + Where(chief),
            Invariant($"{Math.Ceiling(worst.Layers * 10) / 10:0.0}"),
            LayerAdvice.Against(chief, drawing.IsStitched, isOverlapAsked)
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
            (worst, worst.MostPierced),
            Invariant($"more than {ThreadGrid.MostHoles} needle holes, which may tear the cloth, on ")
                + Invariant($"{spots.Sum(s => s.Pierced) * Quarter.Area:0.##} mm² at {Places(spots.Count)}"),
            Invariant($"{worst.Holes}"),
            Remedy(ShapesOf(drawing, worst))
        );
    }

    /// <summary>One line, however many places there are: the manifest lists them, the overview shows them.</summary>
    /// <param name="worst">A spot, and the square of it that is told.</param>
    private static Diagnostic Warning(
        int code,
        Drawing drawing,
        Plan plan,
        (DenseSpot Spot, Square Square) worst,
        string all,
        string most,
        string remedy
    )
    {
        var shapes = ShapesOf(drawing, worst.Spot);
        var parts = worst.Spot.Hoopings.Select(hooping => plan.Hoopings[hooping].Letter).ToList();
        var (last, at) = (shapes[^1], worst.Square.Middle);
        return Diagnostic.Warning(
            code,
            last.Place,
            Invariant($"hoop {plan.Hoop.Name}: {all}; worst is {most} at x {Mm(at.X)}, y {Mm(at.Y)} mm ")
                + $"({Named(last)}{More(shapes.Count, 1)}; {(parts.Count == 1 ? "part" : "parts")} "
                + $"{string.Join(", ", parts.Take(MostParts))}{More(parts.Count, MostParts)}); {remedy}; "
                + "all: rings on the overview, 'dense' in the manifest"
        );
    }

    private static List<Shape> ShapesOf(Drawing drawing, DenseSpot spot) =>
        [.. spot.Shapes.Select(shape => drawing.Shapes[shape])];

    private static string Places(int count) => count == 1 ? "one place" : Invariant($"{count} places");

    private static string More(int count, int named) => count > named ? Invariant($" and {count - named} more") : "";

    private static string Where(LayerCause cause) =>
        cause switch
        {
            LayerCause.Shapes => "where shapes lie over each other",
            LayerCause.Rows => "where rows or columns of one shape come together",
            LayerCause.Overlap => "where parts overlap",
            LayerCause.Travel => "over hidden travel",
            LayerCause.Underlay => "over underlay",
            LayerCause.Ties => "at ties",
            _ => throw new InvalidOperationException($"No words are known for {cause}."),
        };

    /// <summary>Machines and programs count what is on a tape one by one, moves among the stitches.</summary>
    private static string Named(Shape shape)
    {
        var id = Quote.Short(shape.Id, LongestName);
        return shape.Original.IsEmpty
            ? $"'{id}'"
            : Invariant($"'{id}', colour block {shape.Original[0].Block}, from stitch {shape.Place.Column}");
    }

    /// <summary>Against needle holes.</summary>
    private static string Remedy(List<Shape> shapes) =>
        shapes.Exists(s => !s.Original.IsEmpty) ? "write a smaller 'overlap.width'"
        : shapes.Count == 1 ? "give it less underlay or a wider 'row-spacing'"
        : "draw them apart, leave one out ('as: leave'), or give fills and columns less underlay or a wider "
            + "'row-spacing'";

    private static double Mm(double micrometres) => Math.Round(micrometres / Units.Millimetre, 1);
}
