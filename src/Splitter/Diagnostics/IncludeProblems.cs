using System.Collections.Immutable;
using static System.FormattableString;

namespace Splitter.Diagnostics;

/// <summary>What can be wrong with the files that a recipe includes: SPL1080 to SPL1099.</summary>
internal static class IncludeProblems
{
    internal static Diagnostic NotReadable(Place place, string path, string why) =>
        Diagnostic.Error(1080, place, $"the included file '{path}' {why}; correct 'include', or put the file there");

    internal static Diagnostic OutsideTheTree(Place place, string path) =>
        Diagnostic.Error(
            1081,
            place,
            $"the included file '{path}' lies outside the recipe's folder; move it there or into a folder in it"
        );

    internal static Diagnostic Circle(Place place, ImmutableArray<string> files) =>
        Diagnostic.Error(
            1082,
            place,
            $"this includes itself ({string.Join(", then ", files)}); leave one 'include' of these out"
        );

    internal static Diagnostic NotKeys(Place place) =>
        Diagnostic.Error(
            1083,
            place,
            "an included file is keys with values, as in 'hoops:' or 'threads:'; begin with one"
        );

    internal static Diagnostic OfTheRecipe(Place place, string key) =>
        Diagnostic.Error(
            1084,
            place,
            $"'{key}' is each recipe's own, so an included file cannot have it; write it in the recipe"
        );

    internal static Diagnostic TooMany(Place place, int most) =>
        Diagnostic.Error(
            1085,
            place,
            Invariant($"the recipe includes more than {most} files with this one; put several into one")
        );
}
