using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Recipes;
using Splitter.Recipes.Language;
using static System.FormattableString;

namespace Splitter.Diagnostics;

/// <summary>What does not fit together in a recipe: SPL1060 to SPL1099.</summary>
internal static class RecipeProblems
{
    internal static Diagnostic FileOrShapes(Place place) =>
        Error(1060, place, "artwork is either a 'file' or 'shapes' in the recipe; write one of the two");

    internal static Diagnostic BlocksWithoutTape(Place place) =>
        Error(
            1072,
            place,
            "only a tape has colour blocks; in a drawing, colours say which thread sews what: take 'blocks' out"
        );

    internal static Diagnostic ShapeUnpainted(Place place) =>
        Error(1061, place, "the shape has no colour, so that nothing would be sewn; add 'fill', 'stroke' or both");

    internal static Diagnostic EmptyMatch(Place place) =>
        Error(
            1062,
            place,
            "'match' asks nothing, so that no later rule would ever count; ask for id, class, fill, stroke or "
                + "stroke-width"
        );

    internal static Diagnostic FoldsNeedSize(Place place) =>
        Error(
            1063,
            place,
            "folds lie on a cloth whose size is known; add 'size: auto' to 'cloth', or its 'size' and 'artwork-at'"
        );

    internal static Diagnostic SizeNeedsArtworkAt(Place place) =>
        Error(
            1064,
            place,
            "the cloth has a size, but nothing says where the artwork lies on it; add 'artwork-at: centre', or "
                + "a place, as in 'artwork-at: [20 mm, 30 mm]'"
        );

    internal static Diagnostic NoEdgesYet(Place place, string key) =>
        Error(
            1071,
            place,
            "'size: auto' cuts the cloth to the artwork, so that no distance from its edges is known yet; "
                + $"write '{key}: centre', or the size of the cloth"
        );

    internal static Diagnostic ArtworkOffCloth(Place place, (int Width, int Height) size) =>
        Error(
            1065,
            place,
            Invariant($"the artwork begins beyond the cloth, which is {Mm(size.Width)} x ")
                + Invariant($"{Mm(size.Height)} mm; correct 'artwork-at' or 'size'")
        );

    internal static Diagnostic FoldOffCloth(Place place, string fold, string extent, int side) =>
        Error(
            1066,
            place,
            Invariant($"the {fold} fold does not lie on the cloth, which is {Mm(side)} mm {extent}; bring ")
                + "it closer to its edge"
        );

    internal static Diagnostic ClearanceTooLarge(Place place, int clearance, Hoop hoop, int most) =>
        Error(
            1067,
            place,
            Invariant($"a clearance of {Mm(clearance)} mm leaves no room in hoop '{hoop.Name}' ")
                + Invariant($"({Mm(hoop.Width)} x {Mm(hoop.Height)} mm); write at most {Mm(most)} mm")
        );

    internal static Diagnostic UnknownHoop(Place place, string name, ImmutableArray<string> known) =>
        Error(
            1068,
            place,
            $"the recipe has no hoop '{Quote.Short(name)}'; {Words.Instead(name, known, "its hoops are", "and")}"
        );

    internal static Diagnostic ThroatNeedsSize(Place place) =>
        Error(
            1069,
            place,
            "how much cloth lies in the throat is known only of a cloth whose size is known; add 'size: auto' "
                + "to 'cloth', or its 'size' and 'artwork-at'"
        );

    internal static Diagnostic AngleAndGuide(Place place) =>
        Error(1070, place, "rows either have an 'angle' or follow a 'guide'; write one of the two");

    private static Diagnostic Error(int code, Place place, string message) => Diagnostic.Error(code, place, message);

    private static double Mm(int micrometres) => Units.ToMillimetres(micrometres);
}
