using System.Collections.Immutable;
using System.Text.Json;
using Splitter.Geometry;
using Splitter.Outputs;
using Splitter.Parts;

namespace Splitter.Checking;

/// <summary>What the manifest on disk says of a part; nulls where it says nothing that can be read.</summary>
internal sealed record OldPart(Point? Centre, Turn? Turn, ImmutableArray<string?> Threads)
{
    internal static readonly OldPart Unknown = new(null, null, []);

    /// <summary>The part as it is now has the same field and threads, as far as is known.</summary>
    internal bool Agrees(Part part) =>
        (Centre ?? part.Field.Centre) == part.Field.Centre
        && (Turn ?? part.Field.Turn) == part.Field.Turn
        && ThreadsOf(part).IsEmpty;

    /// <summary>Steps whose thread is another now; a step that only one side has shows in the stitches.</summary>
    internal ImmutableArray<ThreadDifference> ThreadsOf(Part part) =>
        [
            .. part
                .Steps.Zip(Threads, (step, before) => (step, before))
                .Where(pair => pair.before is not null && pair.before != PartFigures.NameOf(pair.step))
                .Select(pair => new ThreadDifference(pair.step.Number, pair.before, PartFigures.NameOf(pair.step))),
        ];
}

/// <summary>The manifest on disk, read for comparing; it may be anything, and then nothing is known.</summary>
internal sealed record OldManifest(ImmutableDictionary<string, OldPart> Parts)
{
    internal OldPart Part(string letter) => Parts.GetValueOrDefault(letter, OldPart.Unknown);

    internal static OldManifest Read(byte[]? bytes)
    {
        var parts = ImmutableDictionary.CreateBuilder<string, OldPart>(StringComparer.Ordinal);
        try
        {
            if (bytes is { } text)
            {
                using var json = JsonDocument.Parse(text);
                foreach (var part in json.RootElement.GetProperty("parts").EnumerateArray())
                    parts[part.GetProperty("letter").GetString()!] = Old(part);
            }
        }
        catch (Exception e)
            when (e
                    is JsonException
                        or KeyNotFoundException
                        or InvalidOperationException
                        or FormatException
                        or ArgumentNullException
            )
        {
            // A damaged manifest is a changed file, which is told anyway.
        }
        return new(parts.ToImmutable());
    }

    private static OldPart Old(JsonElement part)
    {
        var field = part.GetProperty("field");
        var centre = field.GetProperty("center_mm");
        var turn = field.GetProperty("turn_deg").GetInt32();
        return new(
            Point.FromMillimetres(centre[0].GetDouble(), centre[1].GetDouble()),
            turn is 0 or 90 or 180 or 270 ? (Turn)turn : null,
            [
                .. part.GetProperty("steps")
                    .EnumerateArray()
                    .Select(s => s.TryGetProperty("thread", out var thread) ? thread.GetString() : null),
            ]
        );
    }
}
