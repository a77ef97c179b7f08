using System.Diagnostics;
using System.Globalization;

namespace Splitter.Benchmarks.Speed;

/// <summary>What a stage took.</summary>
/// <param name="Seconds">On the wall's clock.</param>
/// <param name="Processor">Seconds of all threads together: what a busy machine does not lengthen.</param>
/// <param name="Megabytes">The most that the process held meanwhile.</param>
internal sealed record StageTime(string Stage, double Seconds, double Processor, double Megabytes);

/// <summary>Times one stage after another of a process that does nothing else.</summary>
internal sealed class StageClock
{
    private readonly List<StageTime> times = [];

    internal IReadOnlyList<StageTime> Times => times;

    internal T Time<T>(string stage, Func<T> work)
    {
        ForgetPeak();
        var (clock, processor) = (Stopwatch.StartNew(), Processor());
        var result = work();
        times.Add(
            new(stage, clock.Elapsed.TotalSeconds, (Processor() - processor).TotalSeconds, Status("VmHWM:") / 1e3)
        );
        return result;
    }

    private static TimeSpan Processor() => Environment.CpuUsage.TotalTime;

    /// <summary>Linux counts the peak of memory anew after this (proc_pid_clear_refs(5)).</summary>
    private static void ForgetPeak() => File.WriteAllText("/proc/self/clear_refs", "5");

    /// <summary>A line of proc_pid_status(5), kB.</summary>
    private static double Status(string key) =>
        double.Parse(
            File.ReadLines("/proc/self/status")
                .First(line => line.StartsWith(key, StringComparison.Ordinal))[key.Length..]
                .Replace("kB", "", StringComparison.Ordinal),
            CultureInfo.InvariantCulture
        );
}
