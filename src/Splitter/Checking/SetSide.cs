using System.Collections.Immutable;
using Splitter.Checking.Inspecting;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Outputs;
using Splitter.Planning;
using Splitter.Recipes;
using Splitter.Tapes;

namespace Splitter.Checking;

/// <summary>One of two sets that are compared: its files, what its manifest says, and what its tapes sew.</summary>
/// <param name="Paths">Its files, relative to the output folder, in their order.</param>
/// <param name="Read">Null for a file that is not there.</param>
internal sealed record SetSide(string Hoop, ImmutableArray<string> Paths, ReadOutput Read)
{
    /// <summary>Where a manifest says nothing of a field, the tape is laid as it is.</summary>
    private static readonly Field Anywhere = new(new Hoop("any", 0, 0), default, Turn.None, 0);

    /// <summary>
    /// The parts as they are known to whoever made them, with the names of shapes; none for a set on disk.
    /// </summary>
    internal ImmutableArray<Parts.Part> Made { get; init; } = [];

    internal KnownManifest Manifest { get; } = KnownManifest.Read(Read($"{Hoop}/{ManifestWriter.FileName}"));

    /// <summary>What a recipe makes now.</summary>
    internal static SetSide Of(PartSet set)
    {
        var files = set.Files.ToDictionary(f => f.Path, f => f.Bytes, StringComparer.Ordinal);
        return new(
            set.Plan.Hoop.Name,
            [.. set.Files.Select(f => f.Path)],
            path => files.TryGetValue(path, out var bytes) ? bytes.ToArray() : null
        )
        {
            Made = set.Parts,
        };
    }

    /// <summary>
    /// What an earlier run wrote, as its sums list it. Files of the person beside them are none of our business.
    /// </summary>
    internal static SetSide OnDisk(string hoop, ReadOutput read) =>
        new(
            hoop,
            read($"{hoop}/{SumsWriter.FileName}") is { } sums
                ?
                [
                    .. SumsReader
                        .Names(sums)
                        .Append(SumsWriter.FileName)
                        .Distinct(StringComparer.Ordinal)
                        .Select(name => $"{hoop}/{name}")
                        .Where(path => read(path) is not null),
                ]
                : [],
            read
        );

    /// <summary>The letters of its parts, in sewing order.</summary>
    internal ImmutableArray<string> Letters =>
        Made.IsEmpty
            ? [.. Paths.Select(PartFiles.LetterOfTape).OfType<string>()]
            : [.. Made.Select(part => part.Letter)];

    internal string TapeOf(string letter) => $"{Hoop}/{PartFiles.Tape(letter)}";

    internal byte[]? Tape(string letter) => Read(TapeOf(letter));

    /// <summary>Its field on the drawing; what is not known is taken from the other set.</summary>
    internal Field FieldOf(string letter, Field? other = null)
    {
        if (Made.FirstOrDefault(part => part.Letter == letter) is { } made)
            return made.Field;
        var (known, field) = (Manifest.Part(letter), other ?? Anywhere);
        return field with { Centre = known.Centre ?? field.Centre, Turn = known.Turn ?? field.Turn };
    }

    /// <summary>With what a part is sewn.</summary>
    internal Result<StepThreads> Threads(string letter) =>
        from tape in TapeReader.Read(PartFiles.Tape(letter), Tape(letter) ?? [])
        select StepThreads.Of(PartFiles.Tape(letter), TapeCounts.Of(tape), Read($"{Hoop}/{ManifestWriter.FileName}"));

    /// <summary>
    /// What the part sews, laid on the drawing; where no shapes are known, a step and its thread stand for them.
    /// </summary>
    internal Result<ImmutableArray<SewnRun>> Runs(string letter, Field field)
    {
        if (Made.FirstOrDefault(part => part.Letter == letter) is { } made)
            return Result.Of(SewnRun.Of(made));
        var steps = Manifest.Part(letter).Steps;
        string Name(int step) =>
            FormattableString.Invariant(
                $"step {step}{(step <= steps.Length && steps[step - 1].Thread is { } thread ? $" ({thread})" : "")}"
            );
        return from tape in TapeReader.Read(PartFiles.Tape(letter), Tape(letter) ?? [])
            select SewnRun.Of(tape, field, Name);
    }
}
