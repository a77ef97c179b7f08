using System.Collections.Immutable;
using System.Text.Json;
using Splitter.Outputs;
using Splitter.Outputs.Pictures;
using Splitter.Parts;
using Splitter.Tapes;

namespace Splitter.Checking.Inspecting;

/// <summary>The thread of a step, as far as is known.</summary>
/// <param name="Name">Of its colour, or what marks it sews; null where nothing is known.</param>
internal sealed record StepThread(string? Name, Colour Colour);

/// <summary>
/// The threads of a tape's steps: from the manifest beside it, if that speaks of this very tape. A tape itself holds
/// none; its steps then take quiet colours of ours in turn.
/// </summary>
internal sealed record StepThreads(ImmutableArray<StepThread> Steps, bool AreKnown)
{
    /// <summary>Told apart by their lightness too, one after the other.</summary>
    private static readonly ImmutableArray<Colour> Quiet =
    [
        Colour.Of("#4b6a88"),
        Colour.Of("#c4a36a"),
        Colour.Of("#5f7f67"),
        Colour.Of("#b5705c"),
        Colour.Of("#7a6a8f"),
        Colour.Of("#9fb3b8"),
        Colour.Of("#6b5a4c"),
        Colour.Of("#b9a5b3"),
    ];

    internal static Colour QuietOf(int step) => Quiet[(step - 1) % Quiet.Length];

    /// <param name="file">The tape's name, without its folder.</param>
    /// <param name="manifest">What stands in the file beside it; null where there is none.</param>
    internal static StepThreads Of(string file, TapeCounts counts, byte[]? manifest)
    {
        try
        {
            if (manifest is not null)
            {
                using var json = JsonDocument.Parse(manifest);
                if (Known(json.RootElement, file, counts) is { } steps)
                    return new(steps, AreKnown: true);
            }
        }
        catch (Exception e)
            when (e is JsonException or KeyNotFoundException or InvalidOperationException or FormatException)
        {
            // It is no manifest of ours, or a damaged one: then nothing is known.
        }
        return new([.. counts.Steps.Select((_, i) => new StepThread(null, QuietOf(i + 1)))], AreKnown: false);
    }

    /// <summary>Null where the manifest does not list the tape, or lists one with other steps.</summary>
    private static ImmutableArray<StepThread>? Known(JsonElement manifest, string file, TapeCounts counts)
    {
        var colours = new Dictionary<string, Colour>(StringComparer.Ordinal);
        foreach (var thread in manifest.GetProperty("threads").EnumerateArray())
            colours[thread.GetProperty("name").GetString() ?? ""] = ColourOf(thread.GetProperty("color").GetString());
        foreach (var part in manifest.GetProperty("parts").EnumerateArray())
        {
            if (!part.GetProperty("files").EnumerateArray().Any(f => f.GetString() == file))
                continue;
            ImmutableArray<JsonElement> steps = [.. part.GetProperty("steps").EnumerateArray()];
            if (steps.Select(s => s.GetProperty("stitches").GetInt32()).SequenceEqual(counts.Steps))
                return [.. steps.Select(s => Of(s, colours))];
        }
        return null;
    }

    private static Colour ColourOf(string? text) =>
        text is { Length: 7 } && text[0] == '#' && text.Skip(1).All(char.IsAsciiHexDigit)
            ? Colour.Of(text)
            : throw new FormatException($"'{text}' is no colour.");

    private static StepThread Of(JsonElement step, Dictionary<string, Colour> colours)
    {
        var (name, kind) = (step.GetProperty("thread").GetString() ?? "", step.GetProperty("kind").GetString());
        return kind == Words.Of(StepKind.Body) ? new(name, colours[name])
            : kind == Words.Of(StepKind.Placement) ? new("lines for the folds", MarkInk.Placement)
            : kind == Words.Of(StepKind.Alignment) ? new("crosses", MarkInk.Alignment)
            : kind == Words.Of(StepKind.Corners) ? new("corners", MarkInk.Corner)
            : new("corners for later parts", MarkInk.Corner);
    }
}
