using System.Collections.Immutable;

namespace Splitter.Benchmarks.Speed;

/// <summary>What a workload took with some number of threads.</summary>
internal sealed record SpeedRow
{
    private const string WholeRun = "whole";

    public required string Name { get; init; }
    public required int Jobs { get; init; }
    public required int Stitches { get; init; }
    public required int Parts { get; init; }
    public required int Shapes { get; init; }

    /// <summary>Of all files.</summary>
    public required long Bytes { get; init; }
    public required ImmutableArray<StageTime> Stages { get; init; }

    /// <summary>What is measured to compare with, in the same process.</summary>
    public required ImmutableArray<StageTime> Besides { get; init; }

    /// <summary>All stages together.</summary>
    internal StageTime Whole =>
        new(WholeRun, Stages.Sum(s => s.Seconds), Stages.Sum(s => s.Processor), Stages.Max(s => s.Megabytes));

    internal IEnumerable<StageTime> AndWhole => [.. Stages, Whole];

    internal StageTime Of(string name) => AndWhole.Concat(Besides).First(s => s.Stage == name);

    /// <summary>Of the same work run several times, each stage as it was when least else was done beside it.</summary>
    internal static SpeedRow Least(IReadOnlyList<SpeedRow> runs) =>
        runs[0] with
        {
            Stages = Least(runs.Select(r => r.Stages)),
            Besides = Least(runs.Select(r => r.Besides)),
        };

    private static ImmutableArray<StageTime> Least(IEnumerable<ImmutableArray<StageTime>> runs) =>
        [
            .. runs.SelectMany(r => r)
                .GroupBy(s => s.Stage)
                .Select(same => new StageTime(
                    same.Key,
                    same.Min(s => s.Seconds),
                    same.Min(s => s.Processor),
                    same.Min(s => s.Megabytes)
                )),
        ];
}
