using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Recipes.Language;
using static System.FormattableString;

namespace Splitter.Diagnostics;

/// <summary>
/// What can be wrong with single keys, SPL1020 to SPL1029, and with single values, SPL1030 to SPL1059.
/// </summary>
internal static class RecipeValueProblems
{
    /// <param name="free">Those of the known keys that do not stand there yet.</param>
    internal static Diagnostic UnknownKey(
        Place place,
        string key,
        ImmutableArray<string> known,
        ImmutableArray<string> free
    ) => Error(1020, place, $"unknown key '{Quote.Short(key)}'; {KeyInstead(key, known, free)}");

    /// <summary>Messages, and README, name a key inside another with a point between them.</summary>
    private static string KeyInstead(string key, ImmutableArray<string> known, ImmutableArray<string> free) =>
        key.Split('.', 2) is [var outer, { Length: > 0 } inner] && known.Contains(outer)
            ? $"write '{Quote.Short(inner)}' under '{outer}'"
        : Words.Nearest(key, free) is { } nearest ? $"did you mean '{nearest}'?"
        : $"the keys here are {Words.List(known, "and")}";

    internal static Diagnostic MissingKey(Place place, Key key) =>
        Error(1021, place, $"'{key.Name}' is missing; add it, as in '{key.Name}: {key.Example}'");

    internal static Diagnostic OtherVersion(Place place, string version, int known) =>
        Error(
            1024,
            place,
            $"the recipe is in version {Quote.Short(version)} of the language, and this Splitter reads version "
                + $"{known}; write 'splitter: {known}' if it is, or take a Splitter that knows the other"
        );

    internal static Diagnostic WrongForm(Place place, Key key, string expected, string found) =>
        Error(1030, place, $"'{key.Name}' takes {expected}, not {found}; write it as in '{key.Name}: {key.Example}'");

    internal static Diagnostic NoValue(Place place, Key key, string expected) =>
        Error(
            1031,
            place,
            $"'{key.Name}' has no value and takes {expected}; write it as in '{key.Name}: {key.Example}'"
        );

    /// <param name="instead">What to write: see <see cref="Proposed"/>.</param>
    internal static Diagnostic NoUnit(Place place, string key, string quantity, string text, string instead) =>
        Error(1032, place, $"'{key}' takes {quantity}, and {Quote.Short(text)} has no unit; write {instead}");

    /// <summary>Of a call, where hardly anybody means centimetres or inches without saying so.</summary>
    internal static Diagnostic WidthWithoutUnit(Place place, string text) =>
        Error(1032, place, $"the width {Quote.Short(text)} has no unit; write '{text}mm' if millimetres are meant");

    /// <param name="instead">What to write: see <see cref="Proposed"/>.</param>
    internal static Diagnostic UnknownUnit(
        Place place,
        string key,
        string quantity,
        string text,
        string unit,
        string instead
    ) =>
        Error(
            1033,
            place,
            $"'{key}' takes {quantity}, and '{Quote.Short(unit)}' in {Quote.Short(text)} is no unit of it; "
                + $"write {instead}"
        );

    /// <summary>What to write instead of a value: one of some that are in range, or any in it.</summary>
    internal static string Proposed(IReadOnlyCollection<string> values, string least, string most) =>
        values.Count > 0 ? Words.List(values, "or") : $"a value from {least} to {most}";

    internal static Diagnostic OutOfRange(Place place, string key, string text, string least, string most) =>
        Error(1034, place, $"'{key}' is {Quote.Short(text)}; write a value from {least} to {most}");

    internal static Diagnostic DecimalComma(Place place, string key, string instead) =>
        Error(1035, place, $"'{key}' has a decimal comma; write {Quote.Short(instead)}");

    internal static Diagnostic UnitOnFirstSide(Place place, string key, string text, string instead) =>
        Error(
            1036,
            place,
            $"'{key}' is {Quote.Short(text)}, with a unit on its first side only; write {Quote.Short(instead)}"
        );

    internal static Diagnostic UnknownWord(Place place, string key, string word, ImmutableArray<string> known) =>
        Error(1037, place, $"'{key}' cannot be '{Quote.Short(word)}'; {Words.Instead(word, known, "write", "or")}");

    internal static Diagnostic NotRightAngle(Place place, string text) =>
        Error(
            1038,
            place,
            $"a field is turned by right angles only, not by {Quote.Short(text)}: the corners that two parts "
                + "share lie on whole tape steps in both; write 0 deg, 90 deg, 180 deg or 270 deg"
        );

    internal static Diagnostic OffTape(Place place, string key, string text, int nearest) =>
        Error(
            1039,
            place,
            Invariant($"'{key}' has {Quote.Short(text)}, which is no whole step of 0.1 mm; write ")
                + Invariant($"{Units.ToMillimetres(nearest)} mm")
        );

    internal static Diagnostic ItemTwice(Place place, string key, string item) =>
        Error(1040, place, $"'{key}' lists '{Quote.Short(item)}' a second time; leave one out");

    internal static Diagnostic NotUnique(Place place, string key, string value, Place first) =>
        Error(1041, place, $"'{key}' is '{Quote.Short(value)}', as in line {first.Line}; give each its own");

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
            $"'{key.Name}' is '{Quote.Short(path)}', which {fault}; write a path relative to the recipe, as in "
                + $"'{key.Name}: {key.Example}'"
        );

    internal static Diagnostic UnknownExtension(Place place, string key, string path, ImmutableArray<string> known) =>
        Error(
            1045,
            place,
            $"'{key}' is '{Quote.Short(path)}'; artwork is a file that ends in {Words.List(known, "or")}"
        );

    private static Diagnostic Error(int code, Place place, string message) => Diagnostic.Error(code, place, message);
}
