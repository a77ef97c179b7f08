using System.Diagnostics;
using System.Globalization;

namespace Splitter.Benchmarks.Speed;

/// <summary>What a program took, from its start to its end, as time(1) says.</summary>
/// <param name="Seconds">On the wall's clock.</param>
/// <param name="Processor">Seconds of all its threads.</param>
/// <param name="Megabytes">The most that it held.</param>
internal sealed record Measured(double Seconds, double Processor, double Megabytes)
{
    /// <summary>Runs a program, whose output nobody reads.</summary>
    /// <returns>Null when it ended with anything but 0.</returns>
    internal static Measured? Run(string program, params string[] arguments)
    {
        var answer = Path.GetTempFileName();
        try
        {
            var start = new ProcessStartInfo("time", ["-f", "%e %U %S %M", "-o", answer, program, .. arguments])
            {
                RedirectStandardOutput = true,
                RedirectStandardError = true,
                UseShellExecute = false,
            };
            using var process = Process.Start(start)!;
            process.ErrorDataReceived += (_, _) => { };
            process.BeginErrorReadLine();
            process.StandardOutput.BaseStream.CopyTo(Stream.Null);
            process.WaitForExit();
            if (process.ExitCode != 0)
                return null;
            var values = File.ReadAllText(answer)
                .Split(' ')
                .Select(v => double.Parse(v, CultureInfo.InvariantCulture))
                .ToList();
            return new(values[0], values[1] + values[2], values[3] / 1e3);
        }
        finally
        {
            File.Delete(answer);
        }
    }

    /// <summary>The least of several runs.</summary>
    internal static Measured? Least(int runs, string program, params string[] arguments) =>
        Enumerable
            .Range(0, runs)
            .Select(_ => Run(program, arguments))
            .Aggregate(
                (a, b) =>
                    a is null || b is null
                        ? null
                        : new(
                            Math.Min(a.Seconds, b.Seconds),
                            Math.Min(a.Processor, b.Processor),
                            Math.Min(a.Megabytes, b.Megabytes)
                        )
            );
}
