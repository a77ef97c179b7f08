using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using Splitter.Diagnostics;
using Splitter.Tool.Commands.Comparing;

namespace Splitter.Tool.Commands;

/// <summary>
/// What a command has to say, written once at its end: diagnostics to standard error, sorted, in the form that MSBuild
/// and editors read; the result to standard output, as text or as one JSON document.
/// </summary>
internal sealed record Answer(int ExitCode, ImmutableArray<Diagnostic> Diagnostics)
{
    /// <summary>For a person; empty for nothing.</summary>
    internal string Text { get; init; } = "";

    /// <summary>The same for tools that show findings beside the lines they are about.</summary>
    internal ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>The same for a program: what stands under "result".</summary>
    internal object? Data { get; init; }

    private static readonly JsonSerializerOptions Json = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        WriteIndented = true,
        NewLine = "\n",
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.SnakeCaseLower) },
    };

    /// <summary>Errors, or an answer without them.</summary>
    internal static Answer Wrong(IEnumerable<Diagnostic> diagnostics) =>
        new(Tool.ExitCode.WrongInput, [.. diagnostics]);

    internal int Write(AnswerFormat format, TextWriter output, TextWriter error)
    {
        var sorted = Diagnostics.Sorted();
        foreach (var diagnostic in sorted)
            error.Write($"{diagnostic}\n");
        // Whatever reads standard output never takes an answer for one that is none.
        if (ExitCode == Tool.ExitCode.WrongInput)
            return ExitCode;
        if (format == AnswerFormat.Sarif)
            output.Write(SarifLog.Of(Findings, sorted).ToJsonString(Json) + "\n");
        else if (format == AnswerFormat.Json)
            output.Write(
                JsonSerializer.Serialize(
                    new
                    {
                        ExitCode,
                        Result = Data,
                        Diagnostics = sorted.Select(d => new
                        {
                            d.Severity,
                            d.Code,
                            d.Place.File,
                            d.Place.Line,
                            d.Place.Column,
                            d.Message,
                        }),
                    },
                    Json
                ) + "\n"
            );
        else
            output.Write(Text);
        return ExitCode;
    }
}
