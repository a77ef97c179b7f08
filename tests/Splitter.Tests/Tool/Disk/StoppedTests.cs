using System.Diagnostics;
using System.Runtime.InteropServices;
using Splitter.Tool;

namespace Splitter.Tests.Tool.Disk;

/// <summary>Ctrl+C, as a terminal sends it, while a run works or writes: the old set or the new one, and nothing beside it.</summary>
public sealed class StoppedTests : IDisposable
{
    /// <summary>SIGINT of POSIX's signal.h.</summary>
    private const int Interrupt = 2;

    private readonly string root = Directory.CreateTempSubdirectory("splitter-stopped-").FullName;

    public void Dispose() => Directory.Delete(root, recursive: true);

    [SkippableFact]
    public async Task StoppedAtAnyMomentThereIsTheOldSetOrTheNew()
    {
        Skip.IfNot(OperatingSystem.IsLinux(), "no signal can be sent to a process here");
        Write("old/piece.yaml", "[tape]");
        Write("new/piece.yaml", "[tape, csv, svg, png, worksheet]");
        var watch = Stopwatch.StartNew();
        Assert.Equal(0, await Run("old/piece.yaml", _ => Task.CompletedTask));
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
            var code = await Run("new/piece.yaml", moment);
            Assert.Contains(code, new[] { ExitCode.Done, ExitCode.Stopped });
            Assert.Equal(["small"], Directory.EnumerateFileSystemEntries(At("parts")).Select(Path.GetFileName));
            Assert.Equal(code == ExitCode.Stopped, Files().SequenceEqual(old));
            if (code == ExitCode.Stopped)
                stopped++;
            else
                Assert.Equal(0, await Run("old/piece.yaml", _ => Task.CompletedTask));
        }
        Assert.InRange(stopped, 1, moments.Length);
    }

    private async Task<int> Run(string recipe, Func<Process, Task> meanwhile)
    {
        using var process = Processes.StartTool(root, "make", recipe);
        await meanwhile(process);
        await process.WaitForExitAsync();
        return process.ExitCode;
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
        Directory.CreateDirectory(Path.GetDirectoryName(At(name))!);
        File.WriteAllText(
            At(name),
            $$"""
            splitter: 1
            artwork: { shapes: [{ wkt: "POLYGON ((0 0, 60 0, 30 40, 0 0))", fill: "#14304f" }] }
            hoops: [{ name: small, field: 130 x 180 mm }]
            output: { folder: ../parts, files: {{files}} }
            """
        );
    }

    private string At(params string[] names) => Path.Combine([root, .. names]);

    [DllImport("libc", EntryPoint = "kill")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Kill(int process, int signal);
}
