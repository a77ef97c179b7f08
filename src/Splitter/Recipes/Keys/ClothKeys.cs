using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes.Language;

namespace Splitter.Recipes.Keys;

/// <summary>The keys of <c>cloth</c>.</summary>
internal static class ClothKeys
{
    internal static readonly Key<ClothSize> Size = new(
        "size",
        new WordOr<ClothSize>(
            "auto",
            new(null),
            new Made<(int Width, int Height), ClothSize>(new SizeKind("5 mm", "20000 mm"), size => new(size))
        )
    )
    {
        Says =
            "Width and height of the cut cloth; auto: the artwork, 50 mm on all sides, and as much as the hoop needs.",
        Example = "460 x 620 mm",
        Otherwise = "not known; then there are no folds",
    };

    internal static readonly Key<ArtworkPlace> ArtworkAt = new(
        "artwork-at",
        new WordOr<ArtworkPlace>(
            "centre",
            new(null),
            new Made<Point, ArtworkPlace>(new PointKind("0 mm", "20000 mm"), at => new(at))
        )
    )
    {
        Says = "The artwork's top left corner, from the cloth's; centre: in the middle of the cloth.",
        Example = "[20 mm, 30 mm]",
        Otherwise = "centre on a cloth of size auto; any other size needs it",
    };

    internal static readonly Key<ClothFolds> Folds = new("folds", FoldKeys.Group)
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
        if (!group.TryGet(Size, out var size))
            return;
        if (size.Given is { } cut)
            CheckOn(group, cut);
        else
            CheckOnAuto(group);
    }

    private static void CheckOn(Group group, (int Width, int Height) size)
    {
        if (!group.Has(ArtworkAt))
            group.Report(RecipeProblems.SizeNeedsArtworkAt(group.PlaceOf(Size)));
        else if (group.TryGet(ArtworkAt, out var place) && place.Given is { } at)
            if (at.X >= size.Width || at.Y >= size.Height)
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

    /// <summary>Nobody knows its edges who writes the recipe: all is measured from its middle.</summary>
    private static void CheckOnAuto(Group group)
    {
        if (group.TryGet(ArtworkAt, out var at) && at.Given is not null)
            group.Report(RecipeProblems.NoEdgesYet(group.PlaceOf(ArtworkAt), "artwork-at"));
        if (!group.TryGet(Folds, out var folds))
            return;
        if (folds.Upright?.Distance is not null)
            group.Report(RecipeProblems.NoEdgesYet(group.PlaceOf(Folds, FoldKeys.Upright), "folds.upright"));
        if (folds.Level?.Distance is not null)
            group.Report(RecipeProblems.NoEdgesYet(group.PlaceOf(Folds, FoldKeys.Level), "folds.level"));
    }

    private static Cloth Build(Group group)
    {
        var size = group.OrNull(Size);
        var at = group.OrNull(ArtworkAt);
        var isCut = size is { Given: null };
        return new()
        {
            Size = size?.Given,
            IsCutToArtwork = isCut,
            ArtworkAt = at?.Given ?? default,
            IsArtworkCentred = isCut || at is { Given: null },
            Folds = group.OrNull(Folds) ?? new(null, null),
            Thickness = group.Get(Thickness),
            MostLayers = group.Get(MostLayers),
            Color = group.Get(Color),
            Stretch = group.Get(Stretch),
        };
    }
}

/// <summary>A size, or null for one that is worked out from the artwork.</summary>
internal sealed record ClothSize((int Width, int Height)? Given);

/// <summary>A place, or null for the middle.</summary>
internal sealed record ArtworkPlace(Point? Given);
