using System.Collections.Immutable;
using System.Text.Json;

namespace Splitter.Benchmarks.Mutants;

/// <summary>Reads what the mutation tool has written of a run (mutation-testing-report-schema, JSON).</summary>
internal static class MutationReport
{
    private const string Library = "src/Splitter/";

    /// <summary>
    /// All changes of it that compile and count. Those that another change at the same place stands for, and the wording of
    /// strings, do not; those of files that a run leaves out do.
    /// </summary>
    internal static ImmutableArray<Mutant> Read(string file)
    {
        using var report = JsonDocument.Parse(File.ReadAllBytes(file));
        return
        [
            .. from code in report.RootElement.GetProperty("files").EnumerateObject()
            let path = code.Name[(code.Name.IndexOf(Library, StringComparison.Ordinal) + Library.Length)..]
            let source = code.Value.GetProperty("source").GetString()!
            let lines = LinesOf(source)
            from mutant in code.Value.GetProperty("mutants").EnumerateArray()
            where Counts(mutant)
            let place = mutant.GetProperty("location")
            let first = Offset(place.GetProperty("start"), lines)
            let end = Offset(place.GetProperty("end"), lines)
            select new Mutant(
                path,
                place.GetProperty("start").GetProperty("line").GetInt32(),
                first,
                end,
                mutant.GetProperty("mutatorName").GetString()!,
                mutant.GetProperty("replacement").GetString()!,
                source[first..end],
                Enum.Parse<MutantStatus>(mutant.GetProperty("status").GetString()!)
            ),
        ];
    }

    private static bool Counts(JsonElement mutant) =>
        mutant.GetProperty("status").GetString() switch
        {
            "CompileError" => false,
            "Ignored" => mutant.GetProperty("statusReason").GetString() == "Removed by mutate filter",
            _ => true,
        };

    /// <summary>The first character of each line.</summary>
    private static ImmutableArray<int> LinesOf(string source) =>
        [0, .. Enumerable.Range(0, source.Length).Where(i => source[i] == '\n').Select(i => i + 1)];

    private static int Offset(JsonElement place, ImmutableArray<int> lines) =>
        lines[place.GetProperty("line").GetInt32() - 1] + place.GetProperty("column").GetInt32() - 1;
}
