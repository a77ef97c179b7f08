using System.Globalization;
using Splitter.Recipes;

namespace Splitter.Benchmarks.Speed;

/// <summary>The lines of the tables of speed.</summary>
internal static class SpeedTables
{
    /// <summary>A clock of 1 ms says little about less, s.</summary>
    private const double Measurable = 0.002;

    /// <summary>Wall and processor time of each stage, both threads at work.</summary>
    internal static IEnumerable<string> Stages(IReadOnlyList<SpeedRow> rows) =>
        [
            $"| work | stitches | parts | shapes |{Cells(rows[0].AndWhole.Select(s => $"{s.Stage}, s"))} MB |",
            $"| --- | ---: | ---: | ---: |{Cells(rows[0].AndWhole.Select(_ => "---:"))} ---: |",
            .. rows.Select(r =>
                $"| {r.Name} | {r.Stitches} | {r.Parts} | {r.Shapes} |{Cells(r.AndWhole.Select(Time))} {Text($"{r.Whole.Megabytes:0}")} |"
            ),
            $"| exponent of growth | | | |{Cells(rows[0].AndWhole.Select(s => Exponent(rows, s.Stage)))} |",
        ];

    /// <summary>One thread against two, and what else the same work takes.</summary>
    internal static IEnumerable<string> Compared(
        IReadOnlyList<SpeedRow> rows,
        IReadOnlyList<SpeedRow> alone,
        IReadOnlyList<BaselineRow> baselines
    ) =>
        [
            "| work | one thread, s | to two | MB of files | writing them, s | plain cut, s | ours, s | to cut | make, s | MB | check, s | renderer, s |",
            "| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |",
            .. rows.Zip(alone, baselines)
                .Select(all =>
                {
                    var (row, one, others) = all;
                    return Text(
                        $"| {row.Name} | {Time(one.Whole)} | {one.Whole.Seconds / row.Whole.Seconds:0.00} | {row.Bytes / 1e6:0.0} | {row.Of(StageRun.Writing).Seconds:0.00} | {Time(row.Of(StageRun.PlainCut))} | {Time(row.Of(StageRun.OurPlainCut))} | {row.Of(StageRun.PlainCut).Processor / row.Of("cut").Processor:0.0} | {Time(others.Make)} | {others.Make?.Megabytes:0} | {Time(others.Check)} | {Time(others.Renderer)} |"
                    );
                }),
        ];

    /// <summary>Each kind of outputs made alone, both threads at work; some draw what others need, too.</summary>
    internal static IEnumerable<string> Kinds(IReadOnlyList<SpeedRow> rows) =>
        [
            $"| work |{Cells(Enum.GetNames<OutputKind>().Select(kind => $"{kind.ToLowerInvariant()}, s"))}",
            $"| --- |{Cells(Enum.GetNames<OutputKind>().Select(_ => "---:"))}",
            .. rows.Select(r =>
                $"| {r.Name} |{Cells(Enum.GetValues<OutputKind>().Select(kind => Time(r.Of(StageRun.Alone(kind)))))}"
            ),
        ];

    /// <summary>Processor time and memory as they were first measured, and now.</summary>
    internal static IEnumerable<string> Change(IReadOnlyList<SpeedRow> then, IReadOnlyList<SpeedRow> now) =>
        [
            $"| work |{Cells(now[0].AndWhole.Select(s => $"{s.Stage}, s"))} MB |",
            $"| --- |{Cells(now[0].AndWhole.Select(_ => "---:"))} ---: |",
            .. from row in now
            let before = then.FirstOrDefault(r => r.Name == row.Name)
            where before is not null
            let changes = row.AndWhole.Select(s => Change(before.Of(s.Stage).Processor, s.Processor))
            select $"| {row.Name} |{Cells(changes)} {Text($"{before.Whole.Megabytes:0} → {row.Whole.Megabytes:0}")} |",
        ];

    private static string Exponent(IReadOnlyList<SpeedRow> rows, string stage)
    {
        var quilts = rows.Where(r => Workload.All.Single(w => w.Name == r.Name).IsQuilt)
            .Select(r => ((double)r.Stitches, r.Of(stage).Processor))
            .Where(p => p.Processor >= Measurable)
            .ToList();
        return Growth.Exponent(quilts) is { } exponent ? Text($"{exponent:0.00}") : "";
    }

    private static string Change(double then, double now) => Text($"{then:0.00} → {now:0.00}");

    private static string Time(StageTime time) => Text($"{time.Seconds:0.00} ({time.Processor:0.00})");

    private static string Time(Measured? time) =>
        time is null ? "-" : Text($"{time.Seconds:0.00} ({time.Processor:0.00})");

    private static string Cells(IEnumerable<string> values) => string.Concat(values.Select(v => $" {v} |"));

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
