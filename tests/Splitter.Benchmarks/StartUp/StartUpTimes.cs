using System.Diagnostics;
using System.Runtime.InteropServices;

namespace Splitter.Benchmarks.StartUp;

/// <summary>
/// How long <c>splitter --version</c> takes against a program that does nothing. Both are published and then run in turn,
/// so that what else the machine does falls on both; the ratio of the medians is the figure.
/// </summary>
internal static class StartUpTimes
{
    /// <summary>Enough for a median that stays within a few per cent on a quiet machine.</summary>
    private const int Runs = 41;

    private const string EmptyProject = """
        <Project Sdk="Microsoft.NET.Sdk">
          <PropertyGroup>
            <OutputType>Exe</OutputType>
            <TargetFramework>net10.0</TargetFramework>
            <InvariantGlobalization>true</InvariantGlobalization>
          </PropertyGroup>
        </Project>
        """;

    internal static int Write()
    {
        var folder = Directory.CreateTempSubdirectory("splitter-start-").FullName;
        try
        {
            var source = Directory.CreateDirectory(Path.Combine(folder, "source")).FullName;
            File.WriteAllText(Path.Combine(source, "Empty.csproj"), EmptyProject);
            File.WriteAllText(Path.Combine(source, "Program.cs"), "return 0;\n");
            Publish(source, Path.Combine(folder, "empty"));
            Publish(
                Repository.Find("src", "Splitter.Tool"),
                Path.Combine(folder, "tool"),
                "-p:ForEverySystem=true",
                $"-p:OnlySystem={RuntimeInformation.RuntimeIdentifier}",
                "-r",
                RuntimeInformation.RuntimeIdentifier
            );
            var (empty, tool) = (new List<double>(), new List<double>());
            for (var i = 0; i < Runs; i++)
            {
                empty.Add(Time(Path.Combine(folder, "empty", "Empty")));
                tool.Add(Time(Path.Combine(folder, "tool", "Splitter.Tool"), "--version"));
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

    private static void Publish(string project, string folder, params string[] options) =>
        Run(new("dotnet", ["publish", project, "-c", "Release", "-v", "q", "-o", folder, .. options]));

    private static double Time(string program, params string[] arguments)
    {
        var begun = Stopwatch.GetTimestamp();
        Run(new(program, arguments) { UseShellExecute = false, RedirectStandardOutput = true });
        return Stopwatch.GetElapsedTime(begun).TotalMilliseconds;
    }

    private static void Run(ProcessStartInfo start)
    {
        using var process = Process.Start(start)!;
        process.WaitForExit();
        if (process.ExitCode != 0)
            throw new InvalidOperationException($"{start.FileName} ended with {process.ExitCode}.");
    }

    private static double Median(List<double> times) => times.Order().ElementAt(times.Count / 2);
}
