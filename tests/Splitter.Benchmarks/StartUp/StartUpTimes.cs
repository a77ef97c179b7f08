using System.Diagnostics;
using System.Runtime.InteropServices;

namespace Splitter.Benchmarks.StartUp;

/// <summary>
/// How long <c>splitter --version</c> takes against a program that does nothing. They are run in turn, so that what else
/// the machine does falls on both; the ratio of the medians is the figure.
/// </summary>
internal static class StartUpTimes
{
    /// <summary>Enough for a median that stays within a few per cent on a quiet machine.</summary>
    private const int Runs = 41;

    internal static int Write()
    {
        var folder = Directory.CreateTempSubdirectory("splitter-start-").FullName;
        try
        {
            var programs = new PublishedPrograms(folder);
            var (empty, tool) = (new List<Taken>(), new List<Taken>());
            for (var i = 0; i < Runs; i++)
            {
                empty.Add(Time(programs.Empty));
                tool.Add(Time(programs.Tool, "--version"));
            }
            Write("by the clock", empty.ConvertAll(t => t.Clock), tool.ConvertAll(t => t.Clock));
            // Other systems than Unix do not tell it finely enough.
            if (!OperatingSystem.IsWindows())
                Write("of a processor", empty.ConvertAll(t => t.Processor), tool.ConvertAll(t => t.Processor));
            return 0;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static void Write(string what, List<double> empty, List<double> tool) =>
        Console.WriteLine(
            FormattableString.Invariant(
                $"{what}: splitter --version {Spread(tool)}, empty program {Spread(empty)}, ratio {Share(tool, 0.5) / Share(empty, 0.5):0.00}"
            )
        );

    private static string Spread(List<double> times) =>
        FormattableString.Invariant(
            $"{Share(times, 0.5):0.0} ms (half of them {Share(times, 0.25):0.0} to {Share(times, 0.75):0.0})"
        );

    private static Taken Time(string program, params string[] arguments)
    {
        var (begun, used) = (Stopwatch.GetTimestamp(), UsedByChildren());
        using var process = Process.Start(
            new ProcessStartInfo(program, arguments) { UseShellExecute = false, RedirectStandardOutput = true }
        )!;
        process.WaitForExit();
        if (process.ExitCode != 0)
            throw new InvalidOperationException($"{program} ended with {process.ExitCode}.");
        return new(Stopwatch.GetElapsedTime(begun).TotalMilliseconds, UsedByChildren() - used);
    }

    /// <summary>Of a processor, by all processes that were started and have ended, ms; in steps of a microsecond.</summary>
    private static double UsedByChildren()
    {
        if (OperatingSystem.IsWindows())
            return 0;
        // Seconds and microseconds for user and system, then fourteen counts; a microsecond may have four bytes.
        var usage = new long[18];
        if (ResourceUsage(Children, usage) != 0)
            throw new InvalidOperationException("The system does not tell what children used.");
        return ((usage[0] + usage[2]) * 1e3) + (((int)usage[1] + (int)usage[3]) / 1e3);
    }

    /// <summary>POSIX.1-2017, getrusage: RUSAGE_CHILDREN (value of Linux and macOS).</summary>
    private const int Children = -1;

    [DllImport("libc", EntryPoint = "getrusage")]
    private static extern int ResourceUsage(int who, [Out] long[] usage);

    private static double Share(List<double> times, double share) =>
        times.Order().ElementAt((int)(share * (times.Count - 1)));

    /// <summary>Milliseconds.</summary>
    private readonly record struct Taken(double Clock, double Processor);
}
