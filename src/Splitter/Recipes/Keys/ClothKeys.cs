using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes.Language;

namespace Splitter.Recipes.Keys;

/// <summary>The keys of <c>cloth</c>.</summary>
internal static class ClothKeys
{
    internal static readonly Key<(int Width, int Height)> Size = new("size", new SizeKind("5 mm", "20000 mm"))
    {
        Says = "Width and height of the cut cloth.",
        Example = "460 x 620 mm",
        Otherwise = "not known; then there are no folds",
    };

    internal static readonly Key<Point> ArtworkAt = new("artwork-at", new PointKind("0 mm", "20000 mm"))
    {
        Says = "The artwork's top left corner, from the cloth's.",
        Example = "[20 mm, 30 mm]",
        Default = "[0 mm, 0 mm]",
    };

    internal static readonly Key<Folds> Folds = new("folds", FoldKeys.Group)
    {
        Says = "The lines that the person folds; placement lines are sewn there.",
        Example = "{ upright: centre, level: 1 in from bottom }",
        Otherwise = "no placement lines",
    };

    internal static readonly Key<int> Thickness = new("thickness", new LengthKind("0.05 mm", "10 mm"))
    {
        Says = "Thickness, for thread consumption.",
        Example = "0.6 mm",
        Default = "0.5 mm",
    };

    internal static readonly Key<int> MostLayers = new("most-layers", new CountKind(1, 20))
    {
        Says = "Layers of thread that it bears; where more lie over each other, a warning says so.",
        Example = "4",
        Default = "3",
    };

    internal static readonly Key<string> Color = new("color", new ColourKind())
    {
        Says = "Its colour in the pictures.",
        Example = "\"#f4efe4\"",
        Default = "\"#f4efe4\"",
    };

    internal static readonly Key<Stretch> Stretch = new("stretch", StretchKeys.Group)
    {
        Says = "How far it gives between hoopings, one standard deviation.",
        Example = "{ warp: 0.2 %, weft: 0.4 %, bias: 1.5 % }",
        Default = "{}",
    };

    internal static readonly GroupKind<Cloth> Group = new(
        [Size, ArtworkAt, Folds, Thickness, MostLayers, Color, Stretch],
        Build,
        Check
    );

    private static void Check(Group group)
    {
        if (group.Has(Folds) && !group.Has(Size))
            group.Report(RecipeProblems.FoldsNeedSize(group.PlaceOf(Folds)));
        if (group.Has(Size) && !group.Has(ArtworkAt))
            group.Report(RecipeProblems.SizeNeedsArtworkAt(group.PlaceOf(Size)));
        if (!group.TryGet(Size, out var size))
            return;

        if (group.TryGet(ArtworkAt, out var at) && (at.X >= size.Width || at.Y >= size.Height))
            group.Report(RecipeProblems.ArtworkOffCloth(group.PlaceOf(ArtworkAt), size));
        if (!group.TryGet(Folds, out var folds))
            return;
        if (folds.Upright?.On(size.Width) is { } x && (x <= 0 || x >= size.Width))
            group.Report(
                RecipeProblems.FoldOffCloth(group.PlaceOf(Folds, FoldKeys.Upright), "upright", "wide", size.Width)
            );
        if (folds.Level?.On(size.Height) is { } y && (y <= 0 || y >= size.Height))
            group.Report(
                RecipeProblems.FoldOffCloth(group.PlaceOf(Folds, FoldKeys.Level), "level", "high", size.Height)
            );
    }

    private static Cloth Build(Group group)
    {
        var size = group.MaybeValue(Size);
        var folds = group.OrNull(Folds);
        return new()
        {
            Size = size,
            ArtworkAt = group.Get(ArtworkAt),
            UprightFold = size is { } across ? folds?.Upright?.On(across.Width) : null,
            LevelFold = size is { } down ? folds?.Level?.On(down.Height) : null,
            Thickness = group.Get(Thickness),
            MostLayers = group.Get(MostLayers),
            Color = group.Get(Color),
            Stretch = group.Get(Stretch),
        };
    }
}
