using System.Diagnostics;

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
            var (empty, tool) = (new List<double>(), new List<double>());
            for (var i = 0; i < Runs; i++)
            {
                empty.Add(Time(programs.Empty));
                tool.Add(Time(programs.Tool, "--version"));
            }
            Console.WriteLine(
                FormattableString.Invariant(
                    $"splitter --version {Median(tool):0.0} ms, empty program {Median(empty):0.0} ms, ratio {Median(tool) / Median(empty):0.00}"
                )
            );
            return 0;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static double Time(string program, params string[] arguments)
    {
        var begun = Stopwatch.GetTimestamp();
        using var process = Process.Start(
            new ProcessStartInfo(program, arguments) { UseShellExecute = false, RedirectStandardOutput = true }
        )!;
        process.WaitForExit();
        if (process.ExitCode != 0)
            throw new InvalidOperationException($"{program} ended with {process.ExitCode}.");
        return Stopwatch.GetElapsedTime(begun).TotalMilliseconds;
    }

    private static double Median(List<double> times) => times.Order().ElementAt(times.Count / 2);
}
