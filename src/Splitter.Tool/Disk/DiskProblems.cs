using Splitter.Diagnostics;

namespace Splitter.Tool.Disk;

/// <summary>What writing has to say: SPL5050 to SPL5099.</summary>
internal static class DiskProblems
{
    internal static Diagnostic CannotWrite(string folder, string why) =>
        Diagnostic.Error(
            5050,
            Place.Whole(folder),
            $"cannot write here: {why.TrimEnd('.')}; the old files are untouched. Make room or give access, or "
                + "write elsewhere with '--out'"
        );

    internal static Diagnostic FileOfTheirs(string file) =>
        Diagnostic.Error(
            5051,
            Place.Whole(file),
            "would be replaced, but no earlier run wrote it; move it elsewhere or give it another name"
        );

    internal static Diagnostic NotAFolder(string path) =>
        Diagnostic.Error(
            5052,
            Place.Whole(path),
            "parts would be written into this folder, but it is a file; move it, or write elsewhere with '--out'"
        );

    internal static Diagnostic IsALink(string path) =>
        Diagnostic.Error(
            5053,
            Place.Whole(path),
            "is a link, and links are not followed when parts are written; put a folder here, or name the "
                + "link's target with '--out'"
        );

    internal static Diagnostic AnotherRun(string folder) =>
        Diagnostic.Error(5054, Place.Whole(folder), "another run is writing here; wait for it, then try again");

    internal static bool IsAnotherRun(Diagnostic problem) => problem.Code == "SPL5054";

    internal static Diagnostic SameFolder(string recipe, string other, string folder) =>
        Diagnostic.Error(
            5055,
            Place.Whole(recipe),
            $"would write to '{folder}', and so would '{other}'; give each its own 'output.folder'"
        );

    internal static Diagnostic OldSetNotCleared(string folder, string why) =>
        Diagnostic.Error(
            5056,
            Place.Whole(folder),
            "the new files are in place, but the earlier ones, and files of yours among them, are still in "
                + $"this folder: {why.TrimEnd('.')}; run 'make' again to move yours back and clear the rest"
        );

    internal static Diagnostic TwoOfTheirs(string kept, string file) =>
        Diagnostic.Error(
            5057,
            Place.Whole(kept),
            $"is a file of yours that a run which was cut short left here, and '{file}' has its name by now; "
                + "rename one of the two"
        );

    internal static Diagnostic OldCorrection(string folder, string part) =>
        Diagnostic.Warning(
            5058,
            Place.Whole(folder),
            $"this corrected tape goes with an earlier part {part}, not with what the recipe makes now; do not sew "
                + "it: delete the folder, or measure and 'realign' again"
        );

    internal static Diagnostic OldHoop(string folder, string hoop, string recipe) =>
        Diagnostic.Warning(
            5060,
            Place.Whole(folder),
            $"holds tapes for hoop '{hoop}', which {recipe} has no more: they are as it was then, and nothing keeps "
                + "them up to date; delete the folder, unless you are sewing from it"
        );

    internal static Diagnostic OtherRecipe(string folder, string there, string here) =>
        Diagnostic.Error(
            5059,
            Place.Whole(folder),
            $"holds the parts of another recipe, {there}, which may be half sewn; give {here} an 'output.folder' of "
                + $"its own or write elsewhere with '--out', or delete the folder if {there} is no more"
        );
}
