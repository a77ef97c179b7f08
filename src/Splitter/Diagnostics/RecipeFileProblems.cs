using System.Collections.Immutable;
using static System.FormattableString;

namespace Splitter.Diagnostics;

/// <summary>What can be wrong with a recipe as a file and as YAML: SPL1001 to SPL1019.</summary>
internal static class RecipeFileProblems
{
    /// <summary>
    /// More mistakes than a person reads at once; the rest of a file that is no recipe at all is left unsaid.
    /// </summary>
    private const int Most = 100;

    /// <summary>What the parser makes of the two exclamation marks of YAML's own tags.</summary>
    private const string YamlTags = "tag:yaml.org,2002:";

    /// <summary>Sorted, and bounded in number.</summary>
    internal static ImmutableArray<Diagnostic> Foremost(IEnumerable<Diagnostic> problems)
    {
        var sorted = problems.Sorted();
        return sorted.Length <= Most
            ? sorted
            : [.. sorted[..Most], Error(1019, sorted[Most].Place, "more mistakes follow; correct those above first")];
    }

    internal static Diagnostic FileTooLarge(string file, int bytes, int most) =>
        Error(
            1001,
            Place.Whole(file),
            Invariant($"the recipe has {bytes} bytes, more than the {most} that are read; draw its shapes ")
                + "in a file of their own and name it in 'artwork.file'"
        );

    internal static Diagnostic NotUtf8(Place place) =>
        Error(1002, place, "what stands here is not UTF-8; save the recipe as UTF-8");

    internal static Diagnostic Utf16(string file) =>
        Error(1003, Place.Whole(file), "the recipe is UTF-16; save it as UTF-8");

    internal static Diagnostic NulCharacter(Place place) =>
        Error(
            1004,
            place,
            "a NUL character stands here, as in a file that is not plain text; save the recipe as UTF-8 text"
        );

    internal static Diagnostic Empty(string file) =>
        Error(1005, Place.Whole(file), "the recipe is empty; begin with 'splitter: 1', 'artwork' and 'hoops'");

    internal static Diagnostic NotYaml(Place place, string what, string advice) =>
        Error(1006, place, $"this is not YAML: {what}; {advice}");

    internal static Diagnostic NotClosed(Place place) =>
        Error(1007, place, "this is not YAML: a bracket or a brace is not closed before or after this place; close it");

    internal static Diagnostic NoPair(Place place) =>
        Error(1006, place, "this is not YAML: before this place a key or a value is missing; write 'key: value'");

    internal static Diagnostic TooDeep(Place place, int most) =>
        Error(1008, place, $"values are nested more than {most} deep; a recipe needs six");

    internal static Diagnostic TooManyValues(Place place, int most) =>
        Error(
            1009,
            place,
            Invariant($"the recipe has more than {most} keys and values; draw its shapes in a file of ")
                + "their own and name it in 'artwork.file'"
        );

    internal static Diagnostic SecondDocument(Place place) =>
        Error(1010, place, "a second document begins here; a recipe is one, so move this to a file of its own");

    internal static Diagnostic Anchor(Place place, string name) =>
        Error(
            1011,
            place,
            $"'&{Quote.Short(name)}' is an anchor, which recipes do not have; write each value where it counts"
        );

    internal static Diagnostic Alias(Place place, string name) =>
        Error(
            1012,
            place,
            $"'*{Quote.Short(name)}' repeats another value, which recipes do not do; write the value itself "
                + "here, or put text that begins with * in quotation marks"
        );

    internal static Diagnostic Tag(Place place, string tag) =>
        Error(
            1013,
            place,
            $"'{Quote.Short(tag.Replace(YamlTags, "!!", StringComparison.Ordinal))}' is a tag, which recipes do "
                + "not have; leave it out, or put text that begins with ! in quotation marks"
        );

    internal static Diagnostic KeyNotText(Place place) => Error(1014, place, "a key must be text; write 'key: value'");

    internal static Diagnostic DuplicateKey(Place place, string key, Place first) =>
        Error(
            1015,
            place,
            $"'{Quote.Short(key)}' stands here a second time; line {first.Line} has it already, so keep one of them"
        );

    internal static Diagnostic NotARecipe(Place place) =>
        Error(
            1016,
            place,
            "a recipe is keys with values; begin with 'splitter: 1', 'artwork' and 'hoops', or let 'splitter new' "
                + "write one for a drawing"
        );

    private static Diagnostic Error(int code, Place place, string message) => Diagnostic.Error(code, place, message);
}
