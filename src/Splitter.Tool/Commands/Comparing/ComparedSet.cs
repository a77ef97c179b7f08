using System.Text;
using Splitter.Checking;
using static System.FormattableString;

namespace Splitter.Tool.Commands.Comparing;

/// <summary>What differs in a part, for a program.</summary>
internal sealed record ComparedPart(
    string Letter,
    int StitchesBefore,
    int StitchesAfter,
    int StitchesAdded,
    int StitchesRemoved,
    double FieldMovedMm,
    int TurnBefore,
    int TurnAfter,
    IReadOnlyList<CornerDifference> Corners,
    IReadOnlyList<ThreadDifference> Threads,
    IReadOnlyList<StepDifference> OtherSteps,
    IReadOnlyList<int> OtherStops,
    IReadOnlyList<ShapeDifference> Shapes,
    IReadOnlyList<GoneStitches> Gone
)
{
    internal static ComparedPart Of(PartDifference part) =>
        new(
            part.Letter,
            part.StitchesBefore,
            part.StitchesAfter,
            part.StitchesAdded,
            part.StitchesRemoved,
            part.FieldMovedMm,
            part.TurnBefore,
            part.TurnAfter,
            part.Corners,
            part.Threads,
            part.OtherSteps,
            [.. part.OtherStops.Select(stop => stop.Step)],
            part.Shapes,
            part.Gone
        );
}

/// <summary>What a check or a comparison found in one set.</summary>
/// <param name="Files">How many there are to be.</param>
/// <param name="Weight">How much a reviewer should make of it.</param>
/// <param name="Summary">What it comes to, a line each.</param>
/// <param name="Differences">What differs, a line each; none when all is the same.</param>
internal sealed record ComparedSet(
    string Folder,
    string Hoop,
    int Files,
    bool Same,
    DifferenceWeight Weight,
    IReadOnlyList<string> Summary,
    IReadOnlyList<FileDifference> Different,
    IReadOnlyList<ComparedPart> Parts,
    IReadOnlyList<string> Differences
)
{
    /// <summary>
    /// A person sees from the first lines what is the matter, and asks for all where it is not enough.
    /// </summary>
    private const int MostLines = 60;

    internal static ComparedSet Of(string folder, int files, SetDifferences found, bool isCheck) =>
        new(
            folder.Replace('\\', '/'),
            found.Hoop,
            files,
            found.AreNone,
            found.Weight,
            DifferenceText.SummaryOf(found),
            found.Files,
            [.. found.Parts.Select(ComparedPart.Of)],
            [.. DifferenceText.Of(found, isCheck)]
        );

    /// <param name="isCheck">A set on disk against what the recipe makes now; else one set against another.</param>
    /// <param name="all">Every line, however many.</param>
    internal string ToText(bool isCheck, bool all)
    {
        if (Same)
            return Invariant($"{Folder}: all {Files} files are the same\n");
        var what = isCheck ? "are not what the recipe makes now" : "are not the same";
        // Those that only the earlier set has are none of the later set's files.
        var count = Files + Different.Count(f => f.State == FileState.Extra);
        var text = new StringBuilder(Invariant($"{Folder}: {Different.Count} of {count} files {what}\n"));
        foreach (var line in Summary)
            text.Append($"  {line}\n");
        var most = all ? Differences.Count : MostLines;
        foreach (var line in Differences.Take(most))
            text.Append($"    {line}\n");
        if (Differences.Count > most)
            text.Append(Invariant($"    and {Differences.Count - most} lines more; '--all' tells them\n"));
        return text.ToString();
    }
}
