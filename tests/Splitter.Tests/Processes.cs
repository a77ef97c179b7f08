using System.Diagnostics;
using System.Text;

namespace Splitter.Tests;

/// <summary>What a process returned and wrote, LF at line ends.</summary>
internal sealed record Ran(int ExitCode, string Output, string Error)
{
    /// <summary>All of it, for the message of a test that fails.</summary>
    public override string ToString() => $"exit code {ExitCode}\n{Output}\n{Error}";
}

/// <summary>Runs programs as a person would.</summary>
internal static class Processes
{
    /// <summary>Far more than any of them takes; only a process that hangs is ended.</summary>
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(5);

    internal static async Task<Ran> Run(
        string folder,
        IReadOnlyDictionary<string, string>? environment,
        string program,
        params string[] arguments
    )
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            WorkingDirectory = folder,
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = Encoding.UTF8,
            StandardErrorEncoding = Encoding.UTF8,
        };
        foreach (var (name, value) in environment ?? new Dictionary<string, string>())
            start.Environment[name] = value;
        using var process = Process.Start(start)!;
        using var patience = new CancellationTokenSource(Longest);
        var output = process.StandardOutput.ReadToEndAsync(patience.Token);
        var error = process.StandardError.ReadToEndAsync(patience.Token);
        try
        {
            await process.WaitForExitAsync(patience.Token);
            return new(
                process.ExitCode,
                (await output).ReplaceLineEndings("\n"),
                (await error).ReplaceLineEndings("\n")
            );
        }
        catch (OperationCanceledException late)
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException($"{program} {string.Join(' ', arguments)} did not end within {Longest}.", late);
        }
    }

    /// <summary>
    /// The built tool as a process of its own, for a test that ends it. It hears Ctrl+C also where the tests themselves were
    /// started in the background and do not.
    /// </summary>
    internal static Process StartTool(string folder, params string[] call)
    {
        string[] whole = ["dotnet", Path.Combine(AppContext.BaseDirectory, "Splitter.Tool.dll"), .. call];
        if (OperatingSystem.IsLinux())
            whole = ["env", "--default-signal=INT", .. whole];
        return Process.Start(
            new ProcessStartInfo(whole[0], whole[1..])
            {
                WorkingDirectory = folder,
                UseShellExecute = false,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            }
        )!;
    }
}
