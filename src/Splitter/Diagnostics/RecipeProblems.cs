using System.Collections.Immutable;
using System.Text;
using Splitter.Geometry;
using Splitter.Recipes;
using Splitter.Recipes.Language;
using static System.FormattableString;

namespace Splitter.Diagnostics;

/// <summary>
/// What can be wrong with a recipe: SPL1001 to SPL1019 the file and its YAML, from SPL1020 keys, from SPL1030 values,
/// from SPL1060 what fits together.
/// </summary>
internal static class RecipeProblems
{
    /// <summary>More mistakes than a person reads at once; the rest of a file that is no recipe at all is left unsaid.</summary>
    private const int Most = 100;

    /// <summary>What the parser makes of the two exclamation marks of YAML's own tags.</summary>
    private const string YamlTags = "tag:yaml.org,2002:";

    /// <summary>Longer pieces of the file are cut short in messages.</summary>
    private const int LongestQuote = 40;

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
            Invariant(
                $"the recipe has {bytes} bytes, more than the {most} that are read; draw its shapes in a file of their own and name it in 'artwork.file'"
            )
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
            Invariant(
                $"the recipe has more than {most} keys and values; draw its shapes in a file of their own and name it in 'artwork.file'"
            )
        );

    internal static Diagnostic SecondDocument(Place place) =>
        Error(1010, place, "a second document begins here; a recipe is one, so move this to a file of its own");

    internal static Diagnostic Anchor(Place place, string name) =>
        Error(
            1011,
            place,
            $"'&{Short(name)}' is an anchor, which recipes do not have; write each value where it counts"
        );

    internal static Diagnostic Alias(Place place, string name) =>
        Error(
            1012,
            place,
            $"'*{Short(name)}' repeats another value, which recipes do not do; write the value itself here, or put text that begins with * in quotation marks"
        );

    internal static Diagnostic Tag(Place place, string tag) =>
        Error(
            1013,
            place,
            $"'{Short(tag.Replace(YamlTags, "!!", StringComparison.Ordinal))}' is a tag, which recipes do not have; leave it out, or put text that begins with ! in quotation marks"
        );

    internal static Diagnostic KeyNotText(Place place) => Error(1014, place, "a key must be text; write 'key: value'");

    internal static Diagnostic DuplicateKey(Place place, string key, Place first) =>
        Error(
            1015,
            place,
            $"'{Short(key)}' stands here a second time; line {first.Line} has it already, so keep one of them"
        );

    internal static Diagnostic NotARecipe(Place place) =>
        Error(1016, place, "a recipe is keys with values; begin with 'splitter: 1', 'artwork' and 'hoops'");

    internal static Diagnostic UnknownKey(Place place, string key, ImmutableArray<string> known) =>
        Error(1020, place, $"unknown key '{Short(key)}'; {Instead(key, known, "the keys here are", "and")}");

    internal static Diagnostic MissingKey(Place place, Key key) =>
        Error(1021, place, $"'{key.Name}' is missing; add it, as in '{key.Name}: {key.Example}'");

    internal static Diagnostic ValueNotYet(Place place, string key, string value, string advice) =>
        Error(1023, place, $"'{key}' cannot be '{Short(value)}', which is not available yet; {advice}");

    internal static Diagnostic OtherVersion(Place place, string version, int known) =>
        Error(
            1024,
            place,
            $"the recipe is in version {Short(version)} of the language, and this Splitter reads version {known}; write 'splitter: {known}' if it is, or take a Splitter that knows the other"
        );

    internal static Diagnostic WrongForm(Place place, Key key, string expected, string found) =>
        Error(1030, place, $"'{key.Name}' takes {expected}, not {found}; write it as in '{key.Name}: {key.Example}'");

    internal static Diagnostic NoValue(Place place, Key key, string expected) =>
        Error(
            1031,
            place,
            $"'{key.Name}' has no value and takes {expected}; write it as in '{key.Name}: {key.Example}'"
        );

    internal static Diagnostic NoUnit(
        Place place,
        string key,
        string quantity,
        string text,
        ImmutableArray<string> units
    ) =>
        Error(
            1032,
            place,
            $"'{key}' takes {quantity}, and {Short(text)} has no unit; write {Words.List(units.Select(u => $"{Short(text)} {u}"), "or")}"
        );

    internal static Diagnostic UnknownUnit(
        Place place,
        string key,
        string quantity,
        string unit,
        ImmutableArray<string> units
    ) =>
        Error(
            1033,
            place,
            $"'{key}' takes {quantity}, and '{Short(unit)}' is no unit of it; write {Words.List(units, "or")}"
        );

    internal static Diagnostic OutOfRange(Place place, string key, string text, string least, string most) =>
        Error(1034, place, $"'{key}' is {Short(text)}; write a value from {least} to {most}");

    internal static Diagnostic DecimalComma(Place place, string key, string text) =>
        Error(1035, place, $"'{key}' has a decimal comma; write {Short(text.Replace(',', '.'))}");

    internal static Diagnostic UnitOnFirstSide(Place place, string key, string text) =>
        Error(
            1036,
            place,
            $"'{key}' is {Short(text)}, with a unit on its first side only; write the unit on each side or once at the end"
        );

    internal static Diagnostic UnknownWord(Place place, string key, string word, ImmutableArray<string> known) =>
        Error(1037, place, $"'{key}' cannot be '{Short(word)}'; {Instead(word, known, "write", "or")}");

    internal static Diagnostic NotRightAngle(Place place, string text) =>
        Error(
            1038,
            place,
            $"a field is turned by right angles only, not by {Short(text)}: the corners that two parts share lie on whole tape steps in both; write 0, 90, 180 or 270"
        );

    internal static Diagnostic OffTape(Place place, string key, string text, int nearest) =>
        Error(
            1039,
            place,
            Invariant(
                $"'{key}' has {Short(text)}, which is no whole step of 0.1 mm; write {Units.ToMillimetres(nearest)} mm"
            )
        );

    internal static Diagnostic ItemTwice(Place place, string key) =>
        Error(1040, place, $"'{key}' lists this twice; leave one out");

    internal static Diagnostic NotUnique(Place place, string key, string value, Place first) =>
        Error(1041, place, $"'{key}' is '{Short(value)}', as in line {first.Line}; give each its own");

    internal static Diagnostic ListLength(Place place, Key key, int found, int least, int most) =>
        Error(
            1042,
            place,
            Invariant($"'{key.Name}' lists {found}; list {least} to {most}, as in '{key.Name}: {key.Example}'")
        );

    internal static Diagnostic HoopNameTaken(Place place, string name, string why) =>
        Error(1043, place, $"a hoop cannot be called '{name}', which {why}; give it another name");

    internal static Diagnostic BadPath(Place place, Key key, string path, string fault) =>
        Error(
            1044,
            place,
            $"'{key.Name}' is '{Short(path)}', which {fault}; write a path relative to the recipe, as in '{key.Name}: {key.Example}'"
        );

    internal static Diagnostic UnknownExtension(Place place, string key, string path, ImmutableArray<string> known) =>
        Error(1045, place, $"'{key}' is '{Short(path)}'; artwork is a file that ends in {Words.List(known, "or")}");

    internal static Diagnostic FileOrShapes(Place place) =>
        Error(1060, place, "artwork is either a 'file' or 'shapes' in the recipe; write one of the two");

    internal static Diagnostic ShapeUnpainted(Place place) =>
        Error(1061, place, "the shape has no colour, so that nothing would be sewn; add 'fill', 'stroke' or both");

    internal static Diagnostic EmptyMatch(Place place) =>
        Error(
            1062,
            place,
            "'match' asks nothing, so that no later rule would ever count; ask for id, class, fill, stroke or stroke-width"
        );

    internal static Diagnostic FoldsNeedSize(Place place) =>
        Error(1063, place, "folds lie on a cloth whose size is known; add 'size' and 'artwork-at' to 'cloth'");

    internal static Diagnostic SizeNeedsArtworkAt(Place place) =>
        Error(
            1064,
            place,
            "the cloth has a size, but nothing says where the artwork lies on it; add 'artwork-at', as in 'artwork-at: [20 mm, 30 mm]'"
        );

    internal static Diagnostic ArtworkOffCloth(Place place, (int Width, int Height) size) =>
        Error(
            1065,
            place,
            Invariant(
                $"the artwork begins beyond the cloth, which is {Mm(size.Width)} x {Mm(size.Height)} mm; correct 'artwork-at' or 'size'"
            )
        );

    internal static Diagnostic FoldOffCloth(Place place, string fold, string extent, int side) =>
        Error(
            1066,
            place,
            Invariant(
                $"the {fold} fold does not lie on the cloth, which is {Mm(side)} mm {extent}; bring it closer to its edge"
            )
        );

    internal static Diagnostic ClearanceTooLarge(Place place, int clearance, Hoop hoop, int most) =>
        Error(
            1067,
            place,
            Invariant(
                $"a clearance of {Mm(clearance)} mm leaves no room in hoop '{hoop.Name}' ({Mm(hoop.Width)} x {Mm(hoop.Height)} mm); write at most {Mm(most)} mm"
            )
        );

    internal static Diagnostic UnknownHoop(Place place, string name, ImmutableArray<string> known) =>
        Error(1068, place, $"the recipe has no hoop '{Short(name)}'; {Instead(name, known, "its hoops are", "and")}");

    internal static Diagnostic ThroatNeedsSize(Place place) =>
        Error(
            1069,
            place,
            "how much cloth lies in the throat is known only of a cloth whose size is known; add 'size' and 'artwork-at' to 'cloth'"
        );

    internal static Diagnostic AngleAndGuide(Place place) =>
        Error(1070, place, "rows either have an 'angle' or follow a 'guide'; write one of the two");

    private static Diagnostic Error(int code, Place place, string message) => Diagnostic.Error(code, place, message);

    private static string Instead(string word, ImmutableArray<string> known, string all, string and) =>
        Words.Nearest(word, known) is { } nearest ? $"did you mean '{nearest}'?" : $"{all} {Words.List(known, and)}";

    /// <summary>A piece of the file in quotation marks.</summary>
    internal static string Quoted(string text) => $"'{Short(text)}'";

    private static double Mm(int micrometres) => Units.ToMillimetres(micrometres);

    /// <summary>A piece of the file, fit for one line of a message.</summary>
    private static string Short(string text)
    {
        var line = new StringBuilder();
        foreach (var rune in text.EnumerateRunes())
        {
            if (line.Length >= LongestQuote)
                return line.Append('…').ToString();
            line.Append(Rune.IsControl(rune) ? " " : rune.ToString());
        }
        return line.ToString();
    }
}
