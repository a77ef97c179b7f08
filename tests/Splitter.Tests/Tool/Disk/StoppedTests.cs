using System.Diagnostics;
using System.Runtime.InteropServices;
using Splitter.Tool;

namespace Splitter.Tests.Tool.Disk;

/// <summary>Ctrl+C, as a terminal sends it, while a run works or writes: the old set or the new one, and nothing beside it.</summary>
public sealed class StoppedTests : IDisposable
{
    /// <summary>SIGINT of POSIX's signal.h.</summary>
    private const int Interrupt = 2;

    /// <summary>The files of the recipe as it was, and as it is.</summary>
    private const string Old = "[tape]",
        New = "[tape, csv, svg, png, worksheet]";

    private readonly string root = Directory.CreateTempSubdirectory("splitter-stopped-").FullName;

    public void Dispose() => Directory.Delete(root, recursive: true);

    [SkippableFact]
    public async Task StoppedAtAnyMomentThereIsTheOldSetOrTheNew()
    {
        Skip.IfNot(OperatingSystem.IsLinux(), "no signal can be sent to a process here");
        var watch = Stopwatch.StartNew();
        Assert.Equal(ExitCode.Done, (await Run(Old, _ => Task.CompletedTask)).Code);
        var whole = watch.Elapsed;
        var old = Files();

        // The moments differ from run to run, and nothing of the test depends on them.
        Func<Process, Task>[] moments =
        [
            process => Stop(process, whole / 4),
            process => Stop(process, whole * 3 / 4),
            // Once it writes.
            process => Stop(process, TimeSpan.Zero, () => Directory.GetFileSystemEntries(At("parts")).Length > 1),
        ];
        var stopped = 0;
        foreach (var moment in moments)
        {
            var (code, told) = await Run(New, moment);
            Assert.Contains(code, new[] { ExitCode.Done, ExitCode.Stopped });
            Assert.Equal(["small"], Directory.EnumerateFileSystemEntries(At("parts")).Select(Path.GetFileName));
            var isOld = Files().SequenceEqual(old);
            // The signal itself ends a process that does not listen yet, or not any more: it has told nothing then.
            if (code == ExitCode.Done || told.Contains("what was there before", StringComparison.Ordinal))
                Assert.Equal(code == ExitCode.Stopped, isOld);
            if (code == ExitCode.Stopped)
                stopped++;
            if (!isOld)
                Assert.Equal(ExitCode.Done, (await Run(Old, _ => Task.CompletedTask)).Code);
        }
        Assert.InRange(stopped, 1, moments.Length);
    }

    private async Task<(int Code, string Told)> Run(string files, Func<Process, Task> meanwhile)
    {
        Write("piece.yaml", files);
        using var process = Processes.StartTool(root, "make", "piece.yaml");
        await meanwhile(process);
        var told = await process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        return (process.ExitCode, told);
    }

    private static async Task Stop(Process process, TimeSpan after, Func<bool>? until = null)
    {
        await Task.Delay(after);
        while (!process.HasExited && until?.Invoke() == false)
            Thread.Yield();
        if (!process.HasExited)
            Assert.Equal(0, Kill(process.Id, Interrupt));
    }

    private string[] Files() =>
        [
            .. Directory
                .EnumerateFiles(At("parts", "small"))
                .Order(StringComparer.Ordinal)
                .Select(file => $"{Path.GetFileName(file)} {Convert.ToHexString(File.ReadAllBytes(file))}"),
        ];

    private void Write(string name, string files)
    {
        File.WriteAllText(
            At(name),
            $$"""
            splitter: 1
            artwork: { shapes: [{ wkt: "POLYGON ((0 0, 60 0, 30 40, 0 0))", fill: "#14304f" }] }
            hoops: [{ name: small, field: 130 x 180 mm }]
            output: { folder: parts, files: {{files}} }
            """
        );
    }

    private string At(params string[] names) => Path.Combine([root, .. names]);

    [DllImport("libc", EntryPoint = "kill")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Kill(int process, int signal);
}
