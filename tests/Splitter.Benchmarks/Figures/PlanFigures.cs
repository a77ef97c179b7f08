using System.Diagnostics;
using System.Text;
using System.Text.Json;

namespace Splitter.Benchmarks.Figures;

/// <summary>
/// The table of planning figures in DEVELOPERS.md. Each row is planned in a process of its own, start-up included, as a
/// person would wait for it; memory is the most that the process held.
/// </summary>
internal static class PlanFigures
{
    /// <summary>Writes the whole table, or prints the lines of some subjects.</summary>
    internal static int Write(string[] names)
    {
        var asked = Subject.All().Select(s => s.Name).Where(name => names.Length == 0 || names.Contains(name));
        var rows = asked.Select(RowOf).ToList();
        if (names.Length > 0)
        {
            rows.ForEach(row => Console.WriteLine(row.Line()));
            return 0;
        }
        FigureTable.Write(
            "figures",
            [
                Row.Header,
                .. rows.Select(r => r.Line()),
                "",
                Summary("Seam cost against straight seams between the same fields", rows, r => r.Ratio),
                Least(rows),
                Summary("Seam cost against straight seams on the plain grid", rows, r => r.RatioToGrid),
            ]
        );
        return 0;
    }

    internal static int PrintRow(string name)
    {
        var clock = Stopwatch.StartNew();
        var subject = Subject.All().Single(s => s.Name == name);
        var request = new Request(name + ".yaml", Encoding.UTF8.GetBytes(subject.Recipe), subject.Read)
        {
            Hoop = subject.Hoop,
            Jobs = Environment.ProcessorCount,
        };
        var planned = Pipeline.Plan(request);
        if (!planned.TryGet(out var outlook))
        {
            Console.Error.WriteLine(string.Join('\n', planned.Diagnostics.Take(5)));
            return 1;
        }
        using var own = Process.GetCurrentProcess();
        var row = Row.Of(name, outlook, clock.Elapsed.TotalSeconds, own.PeakWorkingSet64 / 1e6);
        Console.Write(JsonSerializer.Serialize(row));
        return 0;
    }

    private static Row RowOf(string name)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath!, ["figures", "--row", name])
        {
            RedirectStandardOutput = true,
            UseShellExecute = false,
        };
        using var child = Process.Start(start)!;
        var answer = child.StandardOutput.ReadToEnd();
        child.WaitForExit();
        Console.Error.WriteLine(name);
        return JsonSerializer.Deserialize<Row>(answer)!;
    }

    private static string Summary(string what, List<Row> rows, Func<Row, double?> ratio)
    {
        var ratios = rows.Select(ratio).OfType<double>().Order().ToList();
        return FormattableString.Invariant(
            $"{what}: median {Median(ratios):0.00}, worst {ratios[^1]:0.00}, {ratios.Count(r => r <= 0.5)} of {ratios.Count} at most half."
        );
    }

    private static string Least(List<Row> rows)
    {
        var known = rows.Where(r => r.LeastRatio is not null && r.RatioToLeast is not null).ToList();
        var least = Median([.. known.Select(r => r.LeastRatio!.Value).Order()]);
        var ratio = Median([.. known.Select(r => r.Ratio!.Value).Order()]);
        var times = Median([.. known.Select(r => r.RatioToLeast!.Value).Order()]);
        return FormattableString.Invariant(
            $"Least that any seams between the same fields cost against straight ones: median {least:0.00} where plans have {ratio:0.00} ({known.Count} of them); plans cost a median of {times:0.00} times the least."
        );
    }

    private static double Median(List<double> sorted) =>
        (sorted[sorted.Count / 2] + sorted[(sorted.Count - 1) / 2]) / 2;
}
