using Splitter.Diagnostics;
using Splitter.Outputs;

namespace Splitter.Tool.Commands;

/// <summary>What can be wrong with a call: SPL9000 to SPL9999.</summary>
internal static class CallProblems
{
    /// <summary>Where a mistake of the call itself stands.</summary>
    internal static readonly Place Call = Place.Whole("splitter");

    internal static Diagnostic NotUnderstood(string why) =>
        Diagnostic.Error(9001, Call, $"{why} 'splitter --help' lists commands and options");

    internal static Diagnostic CannotRead(string file, string why) =>
        Diagnostic.Error(9010, Place.Whole(file), $"the file {why}; give the path of a file that can be read");

    internal static Diagnostic RecipeTwice(string file, string other) =>
        Diagnostic.Error(9011, Place.Whole(file), $"is the same recipe as '{other}'; name it once");

    internal static Diagnostic PictureKind(string file) =>
        Diagnostic.Error(9012, Place.Whole(file), "a picture is an .svg or a .png; end the name with one of the two");

    internal static Diagnostic PictureNeedsOneHoop(string file, IEnumerable<string> hoops) =>
        Diagnostic.Error(
            9013,
            Place.Whole(file),
            $"one picture shows one plan, and there are {string.Join(" and ", hoops)}; choose with '--hoop', or "
                + "name a folder"
        );

    internal static Diagnostic CannotWritePicture(string file, string why) =>
        Diagnostic.Error(9014, Place.Whole(file), $"cannot write the picture: {why.TrimEnd('.')}");

    internal static Diagnostic ViewWithoutPicture() =>
        Diagnostic.Error(9015, Call, "'--as' says what a picture shows, and none is asked for; add '--picture FILE'");

    internal static Diagnostic RecipeThere(string file) =>
        Diagnostic.Error(
            9021,
            Place.Whole(file),
            "is there already; give another name, or write over it with '--force'"
        );

    internal static Diagnostic NoSet(string old, string now) =>
        Diagnostic.Error(
            9023,
            Call,
            $"'{old}' and '{now}' are neither two sets, each with its {ManifestWriter.FileName} and "
                + $"{SumsWriter.FileName}, "
                + "nor two folders of such sets; give two folders that 'make' wrote"
        );

    internal static Diagnostic CannotWriteRecipe(string file, string why) =>
        Diagnostic.Error(9022, Place.Whole(file), $"cannot write the recipe: {why.TrimEnd('.')}; give another name");

    internal static Diagnostic NoOffsets() =>
        Diagnostic.Error(
            9016,
            Call,
            "nothing is measured; name the part and what you measured at two places or more: '--part D --at 1 "
                + "0.6 mm right 0.2 mm down --at 2 0.5 mm right', or a file with '--offsets'"
        );

    internal static Diagnostic RecipeOverDrawing(string file) =>
        Diagnostic.Error(9018, Place.Whole(file), "is the drawing itself; give the recipe another name");

    internal static Diagnostic NoTape(string part) =>
        Diagnostic.Error(
            9019,
            Call,
            $"part {part} has no tape to be moved, since 'output.files' of the recipe does not name it; add "
                + "tape and make the parts"
        );

    internal static Diagnostic OffsetsTwice() =>
        Diagnostic.Error(9017, Call, "'--offsets' says it all; leave '--part' and '--at' out");

    internal static Diagnostic CannotAnswer(string why) =>
        Diagnostic.Error(
            9024,
            Call,
            $"cannot write the answer: {why.TrimEnd('.')}; make room where it goes, and ask again (parts that were "
                + "made are whole)"
        );

    internal static Diagnostic CannotWriteList(string file, string why) =>
        Diagnostic.Error(
            9020,
            Place.Whole(file),
            $"the parts are written, but not the list of files for the build tool: {why.TrimEnd('.')}"
        );
}
