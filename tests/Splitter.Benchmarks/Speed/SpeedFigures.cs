using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using Splitter.Benchmarks.Figures;

namespace Splitter.Benchmarks.Speed;

/// <summary>The tables of speed in DEVELOPERS.md. Each row is measured in a process of its own.</summary>
internal static class SpeedFigures
{
    /// <summary>The commit at which the values of then were measured.</summary>
    private const string Then = "1b7d5de";

    /// <summary>Those of a machine that makes its parts beside other work.</summary>
    private const int Jobs = 2;

    /// <summary>A work that takes longer is not measured, and has no row.</summary>
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(5);

    private static readonly JsonSerializerOptions Lines = new() { WriteIndented = false };

    private static string ThenFile => Repository.Find("tests", "Splitter.Benchmarks", "Speed", $"speed-{Then}.jsonl");

    /// <summary>Measures all works and writes the tables.</summary>
    /// <param name="names">Only these, which are printed; <c>quick</c> stands for all small ones.</param>
    internal static int Write(string[] names)
    {
        var (rows, alone, baselines) = (new List<SpeedRow>(), new List<SpeedRow>(), new List<BaselineRow>());
        using var others = new Baselines();
        foreach (var work in Workload.All.Where(w => IsAsked(w, names)))
            if (RowOf(work, Jobs) is { } row && RowOf(work, 1) is { } one)
            {
                rows.Add(row);
                alone.Add(one);
                baselines.Add(others.Of(work));
            }
        string[] tables =
        [
            .. SpeedTables.Stages(rows),
            "",
            .. SpeedTables.Compared(rows, alone, baselines),
            "",
            .. SpeedTables.Kinds(rows),
            "",
            Invariant(
                $"Start-up: `splitter --version` {1e3 * others.Version?.Seconds:0} ms ({1e3 * others.Version?.Processor:0}), an empty program {1e3 * others.Empty?.Seconds:0} ms ({1e3 * others.Empty?.Processor:0})."
            ),
        ];
        var change = SpeedTables.Change(ReadThen(), rows);
        if (names.Length > 0)
            Console.WriteLine(string.Join('\n', [.. tables, "", .. change]));
        else
        {
            FigureTable.Write("speed", tables);
            FigureTable.Write("speed before and after", change);
        }
        return 0;
    }

    private static bool IsAsked(Workload work, string[] names) =>
        names.Length == 0 || names.Contains(work.Name) || (work.IsQuick && names is ["quick"]);

    /// <summary>Measures one work in this process; for profilers, too.</summary>
    /// <param name="kinds">Each kind of outputs alone, too.</param>
    internal static int PrintRow(string name, string jobs, bool kinds)
    {
        var work = Workload.All.Single(w => w.Name == name);
        var row = StageRun.Measure(work, int.Parse(jobs, CultureInfo.InvariantCulture), kinds);
        Console.WriteLine(JsonSerializer.Serialize(row, Lines));
        return 0;
    }

    private static SpeedRow? RowOf(Workload work, int jobs)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath!, ["speed", "--row", work.Name, $"{jobs}", "kinds"])
        {
            RedirectStandardOutput = true,
            UseShellExecute = false,
        };
        using var child = Process.Start(start)!;
        var answer = child.StandardOutput.ReadToEndAsync();
        if (!child.WaitForExit(Longest))
        {
            child.Kill();
            Console.Error.WriteLine($"{work.Name}, {jobs} threads: stopped after {Longest}");
            return null;
        }
        Console.Error.Write(answer.Result);
        return child.ExitCode == 0 ? JsonSerializer.Deserialize<SpeedRow>(answer.Result) : null;
    }

    /// <summary>What a run wrote to its standard error then.</summary>
    private static IReadOnlyList<SpeedRow> ReadThen() =>
        [
            .. File.ReadLines(ThenFile)
                .Select(line => JsonSerializer.Deserialize<SpeedRow>(line)!)
                .Where(row => row.Jobs == Jobs),
        ];

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
