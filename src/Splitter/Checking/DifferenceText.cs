using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Outputs;
using static System.FormattableString;

namespace Splitter.Checking;

/// <summary>
/// Differences as lines for a person: what it comes to first, then files, then what changes at the machine.
/// </summary>
internal static class DifferenceText
{
    /// <summary>Millimetres: each of a mark's stitches lies on the tape's grid, rounded by itself.</summary>
    private const double TapeStepMm = (double)Units.TapeStep / Units.Millimetre;

    /// <summary>
    /// What a reviewer needs first: how much it is, in one line, then what it means in stitches, thread and time.
    /// </summary>
    internal static ImmutableArray<string> SummaryOf(SetDifferences set) =>
        [Weight(set), .. Why(set), .. Parts(set), .. Totals(set.TotalsBefore, set.TotalsAfter)];

    /// <summary>Files first, then what changes at the machine.</summary>
    /// <param name="isCheck">A set on disk against what the recipe makes now; else one set against another.</param>
    internal static IEnumerable<string> Of(SetDifferences set, bool isCheck = true)
    {
        foreach (var line in FileText.Of(set.Files, isCheck))
            yield return line;
        foreach (var (_, line) in AtTheMachine(set))
            yield return line;
    }

    /// <summary>
    /// What changes at the machine, with the shape that each line is about; null for none. A corner that several parts
    /// have is told once.
    /// </summary>
    internal static IEnumerable<(string? Shape, string Text)> AtTheMachine(SetDifferences set) =>
        set
            .Parts.SelectMany(part => part.Corners.Select(corner => (part.Letter, corner)))
            .GroupBy(told => told.corner, told => told.Letter)
            .Select(told =>
                (
                    (string?)null,
                    $"hoop {set.Hoop}, corner {told.Key.Id} (part{(told.Count() > 1 ? "s" : "")} "
                        + $"{string.Join(' ', told)}) {Became(told.Key)}"
                )
            )
            .Concat(
                set.Parts.SelectMany(part =>
                    Of(part).Select(line => (line.Shape, $"hoop {set.Hoop}, part {part.Letter}: {line.Text}"))
                )
            );

    private static string Weight(SetDifferences set) =>
        set.Weight switch
        {
            DifferenceWeight.None => "nothing differs",
            DifferenceWeight.Papers =>
                $"every tape sews the same, and what the person does is the same; only {Kinds(set)} "
                    + $"{(Plural(set) ? "differ" : "differs")}{Made(set)}",
            DifferenceWeight.Work => "every tape sews the same, but not what the person does at the machine",
            _ => "what is sewn differs",
        };

    /// <summary>What of the input explains it, as far as manifests tell.</summary>
    private static IEnumerable<string> Why(SetDifferences set)
    {
        if (set.AreNone || set.Origins is not var (was, now))
            yield break;
        if (was.ChangedTo(now) is { } changed)
            yield return $"why: {changed}";
        else if (set.Versions is var (before, after))
            yield return $"why: made by Splitter {before}, now by {after}, of the same recipe and files";
        else
            yield return "why: not by the recipe or the files it names: they are those that the set was made of";
    }

    private static string Made(SetDifferences set) =>
        set.Versions is var (before, after) ? $" (made by Splitter {before} and {after})" : "";

    private static bool Plural(SetDifferences set) => set.Files.Select(f => KindOf(f.Path)).Distinct().Count() > 1;

    private static string Kinds(SetDifferences set) =>
        string.Join(", ", set.Files.Select(f => KindOf(f.Path)).Distinct(StringComparer.Ordinal));

    private static string KindOf(string path) =>
        path.EndsWith(ManifestWriter.FileName, StringComparison.Ordinal) ? "the manifest"
        : path.EndsWith(".html", StringComparison.Ordinal) ? "the work sheet"
        : path.EndsWith(".pdf", StringComparison.Ordinal) ? "the template"
        : PartFiles.IsTape(path) ? "a tape's label"
        : path.EndsWith(".csv", StringComparison.Ordinal) ? "a list of stitches"
        : path.EndsWith(SumsWriter.FileName, StringComparison.Ordinal) ? "the sums"
        : "a picture";

    private static IEnumerable<string> Parts(SetDifferences set)
    {
        ImmutableArray<(string Word, IEnumerable<string> Letters)> kinds =
        [
            ("changed", set.Parts.Select(p => p.Letter)),
            ("new", Letters(set, FileState.Missing)),
            ("gone", Letters(set, FileState.Extra)),
        ];
        var told = kinds
            .Where(kind => kind.Letters.Any())
            .Select(kind => $"{kind.Word} {string.Join(' ', kind.Letters)}")
            .ToList();
        if (told.Count > 0)
            yield return $"parts: {string.Join("; ", told)}";
        if (
            set.Parts.Sum(p => p.StitchesAdded) is var more
            && set.Parts.Sum(p => p.StitchesRemoved) is var fewer
            && more + fewer > 0
        )
            yield return Invariant($"in changed parts: {more} needle holes are new, {fewer} are gone");
    }

    private static IEnumerable<string> Letters(SetDifferences set, FileState state) =>
        set.Files.Where(f => f.State == state).Select(f => PartFiles.LetterOfTape(f.Path)).OfType<string>();

    private static IEnumerable<string> Totals(KnownTotals? before, KnownTotals? after)
    {
        if (before is null || after is null)
            yield break;
        ImmutableArray<(string What, int From, int To)> counts =
        [
            ("stitches", before.Stitches, after.Stitches),
            ("trims", before.Trims, after.Trims),
            ("stops", before.Stops, after.Stops),
        ];
        var told = counts
            .Where(c => c.From != c.To)
            .Select(c => Invariant($"{c.What} {c.From} to {c.To} ({c.To - c.From:+0;-0})"))
            .ToList();
        if (before.Minutes != after.Minutes)
            told.Add(
                Invariant(
                    $"minutes {before.Minutes:0.0} to {after.Minutes:0.0} ({after.Minutes - before.Minutes:+0.0;-0.0})"
                )
            );
        if (told.Count > 0)
            yield return $"in all: {string.Join(", ", told)}";
        var threads = before
            .ThreadMetres.Keys.Union(after.ThreadMetres.Keys, StringComparer.Ordinal)
            .Order(StringComparer.Ordinal)
            .Select(name =>
                (name, By: after.ThreadMetres.GetValueOrDefault(name) - before.ThreadMetres.GetValueOrDefault(name))
            )
            .Where(thread => Math.Abs(thread.By) >= 0.005)
            .Select(thread => Invariant($"{thread.name} {thread.By:+0.00;-0.00} m"))
            .ToList();
        if (threads.Count > 0)
            yield return $"thread: {string.Join(", ", threads)}";
    }

    /// <summary>
    /// What differs in a part, but for its corners and the stitches that mark them, which are told already.
    /// </summary>
    private static IEnumerable<(string? Shape, string Text)> Of(PartDifference part) =>
        Whole(part)
            .Select(text => ((string?)null, text))
            .Concat(part.Shapes.Where(s => !IsMarkOf(part, s)).Select(s => ((string?)s.Shape, Of(s))))
            .Concat(
                part.Gone.Where(gone => !part.Corners.Any(c => gone.Of == c.Mark))
                    .Select(gone =>
                        (
                            (string?)null,
                            Invariant($"{Stitches(gone.Stitches)} of {gone.Of} around x {gone.XMm:0}, y ")
                                + Invariant($"{gone.YMm:0} mm are not sewn any more")
                        )
                    )
            );

    private static string Of(ShapeDifference shape) =>
        shape.MovedMm is not { } moved ? $"{shape.Shape} is new, {Stitches(shape.StitchesAfter)}"
        : moved == 0 ? $"{shape.Shape} is sewn in another order{More(shape)}"
        : Invariant($"{shape.Shape} moved by up to {moved:0.0} mm{More(shape)}");

    private static IEnumerable<string> Whole(PartDifference part)
    {
        if (part.Unreadable is { } why)
            yield return why;
        if (part.TurnBefore != part.TurnAfter)
            yield return Invariant(
                $"the hoop is {Turned(part.TurnAfter)} now; before it was {Turned(part.TurnBefore)}"
            );
        if (part.FieldMovedMm > 0)
            yield return Invariant($"the hoop's middle moved by {part.FieldMovedMm:0.0} mm");
        if (part.StitchesAdded + part.StitchesRemoved > 0)
            yield return Invariant($"{part.StitchesAdded} needle holes are new, {part.StitchesRemoved} are gone");
        if (part.StepsBefore != part.StepsAfter && part.StepsBefore > 0 && part.StepsAfter > 0)
            yield return Invariant($"it has {part.StepsAfter} steps, not {part.StepsBefore}");
        foreach (var step in part.OtherSteps)
            yield return Invariant($"step {step.Step} ({step.Thread}) {(step.IsNew ? "is new" : "is gone")}");
        foreach (var thread in part.Threads)
            yield return Invariant($"step {thread.Step} is sewn with {thread.After}, not {thread.Before}");
        foreach (var stop in part.OtherStops)
            yield return Invariant($"after step {stop.Step}{StopText.Of(stop)}");
    }

    /// <summary>
    /// Not a shape that happens to have a corner's name: a mark moves with its corner, with all its stitches.
    /// </summary>
    private static bool IsMarkOf(PartDifference part, ShapeDifference shape) =>
        part.Corners.Any(c =>
            c.Id == shape.Shape
            && (
                c.MovedMm is { } corner
                    ? shape.StitchesBefore == shape.StitchesAfter && shape.MovedMm <= corner + TapeStepMm
                    : c.IsNew && shape.MovedMm is null
            )
        );

    private static string Became(CornerDifference corner) =>
        corner.MovedMm is { } by ? Invariant($"moved by {by:0.0} mm")
        : corner.IsNew ? "is new"
        : "is not sewn any more";

    private static string Turned(int degrees) =>
        degrees == 0 ? "not turned" : Invariant($"turned by {degrees} degrees");

    private static string More(ShapeDifference shape)
    {
        var more = shape.StitchesAfter - shape.StitchesBefore;
        return more == 0 ? ""
            : more > 0 ? $"; {Stitches(more)} more"
            : $"; {Stitches(-more)} fewer";
    }

    private static string Stitches(int count) => Invariant($"{count} {(count == 1 ? "stitch" : "stitches")}");
}
