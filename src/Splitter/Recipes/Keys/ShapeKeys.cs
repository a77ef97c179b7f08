using Splitter.Diagnostics;
using Splitter.Recipes.Language;

namespace Splitter.Recipes.Keys;

/// <summary>The keys of a shape in <c>artwork.shapes</c>.</summary>
internal static class ShapeKeys
{
    internal static readonly Key<string> Wkt = new("wkt", new TextKind(1_000_000))
    {
        Says = "Geometry as well-known text (OGC 06-103r4), millimetres, x right, y down.",
        Example = "\"POLYGON ((0 0, 60 0, 30 40, 0 0))\"",
        Required = true,
    };

    internal static readonly Key<string> Id = new("id", new TextKind(200))
    {
        Says = "A name that rules and messages call it by.",
        Example = "sail",
        Otherwise = "the shape's number",
        Unique = StringComparer.Ordinal,
    };

    internal static readonly Key<string> Class = new("class", new TextKind(200))
    {
        Says = "Classes that rules match, blanks between them.",
        Example = "motif",
        Otherwise = "none",
    };

    internal static readonly Key<string> Fill = new("fill", new ColourKind())
    {
        Says = "Colour of its area.",
        Example = "\"#1b3a5c\"",
        Otherwise = "the area is not sewn",
    };

    internal static readonly Key<string> Stroke = new("stroke", new ColourKind())
    {
        Says = "Colour of its line.",
        Example = "\"#1b3a5c\"",
        Otherwise = "the line is not sewn",
    };

    internal static readonly Key<int> StrokeWidth = new("stroke-width", new LengthKind("0 mm", "100 mm"))
    {
        Says = "Width of its line.",
        Example = "1.2 mm",
        Default = "0.4 mm", // as wide as one line of stitches
    };

    internal static readonly GroupKind<InlineShape> Group = new(
        [Wkt, Id, Class, Fill, Stroke, StrokeWidth],
        group =>
            new(
                group.Get(Wkt),
                group.OrNull(Id),
                [.. (group.OrNull(Class) ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries)],
                group.OrNull(Fill),
                group.OrNull(Stroke),
                group.Get(StrokeWidth),
                group.PlaceOf(Wkt)
            ),
        group =>
        {
            if (!group.Has(Fill) && !group.Has(Stroke))
                group.Report(RecipeProblems.ShapeUnpainted(group.Given.Place));
        }
    );
}
