using System.Collections.Immutable;
using System.Text.Json;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;

namespace Splitter.Checking;

/// <summary>A manifest, read for comparing; it may be anything, and then nothing is known.</summary>
internal sealed record KnownManifest(string? Version, ImmutableDictionary<string, KnownPart> Parts, KnownTotals? Totals)
{
    /// <summary>Null where it does not say what it was made of.</summary>
    internal KnownOrigin? Origin { get; private init; }

    /// <summary>The cloth's colour; null where it does not say: sets of earlier versions do not.</summary>
    internal Colour? Cloth { get; private init; }

    internal static readonly KnownManifest Nothing = new(null, ImmutableDictionary<string, KnownPart>.Empty, null);

    internal KnownPart Part(string letter) => Parts.GetValueOrDefault(letter, KnownPart.Unknown);

    internal static KnownManifest Read(byte[]? bytes)
    {
        try
        {
            if (bytes is not { } text)
                return Nothing;
            using var json = JsonDocument.Parse(text);
            return new(
                Try(() => json.RootElement.GetProperty("tool").GetProperty("version").GetString()),
                Try(() =>
                    json
                        .RootElement.GetProperty("parts")
                        .EnumerateArray()
                        .ToImmutableDictionary(part => part.GetProperty("letter").GetString()!, KnownPart.Of)
                ) ?? Nothing.Parts,
                Try(() => KnownTotals.Of(json.RootElement.GetProperty("totals")))
            )
            {
                Origin = Try(() => KnownOrigin.Of(json.RootElement)),
                Cloth = ColourOf(Try(() => json.RootElement.GetProperty("cloth").GetProperty("color").GetString())),
            };
        }
        catch (JsonException)
        {
            // A damaged manifest is a changed file, which is told anyway.
            return Nothing;
        }
    }

    private static Colour? ColourOf(string? text) =>
        text is ['#', .. { Length: 6 } digits] && digits.All(char.IsAsciiHexDigit) ? Colour.Of(text) : null;

    /// <summary>Null where it is not as a manifest has it.</summary>
    private static T? Try<T>(Func<T> read)
        where T : class?
    {
        try
        {
            return read();
        }
        catch (Exception e)
            when (e
                    is KeyNotFoundException
                        or InvalidOperationException
                        or FormatException
                        or ArgumentException
                        or IndexOutOfRangeException
            )
        {
            return null;
        }
    }
}

/// <summary>What a manifest says of a part; nulls where it says nothing that can be read.</summary>
internal sealed record KnownPart(
    Point? Centre,
    Turn? Turn,
    ImmutableArray<KnownStep> Steps,
    ImmutableSortedDictionary<string, Point> Corners
)
{
    internal static readonly KnownPart Unknown = new(
        null,
        null,
        [],
        ImmutableSortedDictionary.Create<string, Point>(StringComparer.Ordinal)
    );

    internal static KnownPart Of(JsonElement part)
    {
        var field = part.GetProperty("field");
        var centre = field.GetProperty("center_mm");
        var turn = field.GetProperty("turn_deg").GetInt32();
        return new(
            Point.FromMillimetres(centre[0].GetDouble(), centre[1].GetDouble()),
            turn is 0 or 90 or 180 or 270 ? (Turn)turn : null,
            [.. part.GetProperty("steps").EnumerateArray().Select(KnownStep.Of)],
            part.TryGetProperty("corners", out var corners)
                ? corners
                    .EnumerateArray()
                    .ToImmutableSortedDictionary(
                        corner => corner.GetProperty("id").GetString()!,
                        corner =>
                            Point.FromMillimetres(
                                corner.GetProperty("x_mm").GetDouble(),
                                corner.GetProperty("y_mm").GetDouble()
                            ),
                        StringComparer.Ordinal
                    )
                : Unknown.Corners
        );
    }
}

/// <summary>A step as a manifest lists it.</summary>
/// <param name="Stop">What the person does before the next; null for nothing.</param>
internal sealed record KnownStep(string? Kind, string? Thread, string? Stop)
{
    internal static KnownStep Of(JsonElement step) => new(Text(step, "kind"), Text(step, "thread"), Text(step, "stop"));

    private static string? Text(JsonElement step, string key) =>
        step.TryGetProperty(key, out var text) ? text.GetString() : null;
}

/// <summary>What a manifest says of all parts together.</summary>
/// <param name="ThreadMetres">By thread, with waste.</param>
internal sealed record KnownTotals(
    int Stitches,
    int Trims,
    int Stops,
    double Minutes,
    ImmutableSortedDictionary<string, double> ThreadMetres
)
{
    internal static KnownTotals Of(JsonElement totals) =>
        new(
            totals.GetProperty("stitches").GetInt32(),
            totals.GetProperty("trims").GetInt32(),
            totals.GetProperty("stops").GetInt32(),
            totals.GetProperty("minutes").GetDouble(),
            totals
                .GetProperty("thread_m")
                .EnumerateObject()
                .ToImmutableSortedDictionary(t => t.Name, t => t.Value.GetDouble(), StringComparer.Ordinal)
        );
}
