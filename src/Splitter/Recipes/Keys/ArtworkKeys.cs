using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes.Language;

namespace Splitter.Recipes.Keys;

/// <summary>The keys of <c>artwork</c>.</summary>
internal static class ArtworkKeys
{
    internal static readonly Key<string> File = new("file", new ArtworkFileKind())
    {
        Says = "The drawing, or a tape of stitches that are split as they are; relative to the recipe.",
        Example = "../artwork/bay.svg",
        Otherwise = "the recipe has shapes of its own",
        IsOwn = true,
    };

    internal static readonly Key<ImmutableArray<InlineShape>> Shapes = new(
        "shapes",
        new GroupListKind<InlineShape>(ShapeKeys.Group, 1, 2000)
    )
    {
        Says = "Shapes written in the recipe itself.",
        Example = "[{ wkt: \"POLYGON ((0 0, 60 0, 30 40, 0 0))\", fill: \"#1b3a5c\" }]",
        Otherwise = "the artwork is in a file",
        IsOwn = true,
    };

    /// <summary>The least that a recipe may ask for, µm.</summary>
    internal const int LeastWidth = 5 * Units.Millimetre;

    internal static readonly Key<int> Width = new(
        "width",
        new LengthKind(FormattableString.Invariant($"{LeastWidth / Units.Millimetre} mm"), "20000 mm")
    )
    {
        Says = "Finished width; the height follows. A tape bears 10 % more or less than its own.",
        Example = "420 mm",
        Otherwise = "the size that the artwork states",
        IsOwn = true,
    };

    internal static readonly Key<ImmutableArray<string>> Blocks = new(
        "blocks",
        new ListKind<string>(new TextKind(80), 1, RecipeKeys.MostThreads) { Repeats = true }
    )
    {
        Says = "Names of the threads that sew a tape's colour blocks, in sewing order, when one comes again.",
        Example = "[deep water, sand, deep water]",
        Otherwise = "the threads in their order, one for each block",
        IsOwn = true,
    };

    internal static readonly Key<ImmutableArray<SewRule>> Sew = new(
        "sew",
        new GroupListKind<SewRule>(SewKeys.Group, 0, 1000) { GoesOn = true }
    )
    {
        Says = "How shapes are sewn; the first rule that matches a shape wins. Those of included files follow.",
        Example = "[{ match: { class: lettering }, as: satin }]",
        Default = "[]",
    };

    internal static readonly GroupKind<ArtworkSource> Group = new([File, Shapes, Width, Blocks, Sew], Build, Check);

    private static void Check(Group group)
    {
        if (group.Has(File) == group.Has(Shapes))
            group.Report(RecipeProblems.FileOrShapes(group.Has(File) ? group.PlaceOf(Shapes) : group.Given.Place));
        var isDrawing = group.OrNull(File) is { } file ? !ArtworkSource.IsTapeName(file) : group.Has(Shapes);
        if (group.Has(Blocks) && isDrawing)
            group.Report(RecipeProblems.BlocksWithoutTape(group.PlaceOf(Blocks)));
    }

    private static ArtworkSource Build(Group group) =>
        new()
        {
            File = group.OrNull(File),
            Shapes = group.MaybeValue(Shapes) ?? [],
            Width = group.MaybeValue(Width),
            Blocks = group.MaybeValue(Blocks) ?? [],
            Sew = group.Get(Sew),
        };
}
