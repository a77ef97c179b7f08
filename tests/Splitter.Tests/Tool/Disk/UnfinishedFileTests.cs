using System.Diagnostics;
using Splitter.Tool.Disk;

namespace Splitter.Tests.Tool.Disk;

/// <summary>What a run leaves that is killed while it writes a list or a first recipe.</summary>
public sealed class UnfinishedFileTests : IDisposable
{
    /// <summary>No process has it: systems count processes up to less than this.</summary>
    private const int Nobody = int.MaxValue;

    private readonly string root = Directory.CreateTempSubdirectory("splitter-unfinished-").FullName;

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Fact]
    public async Task TheNextRunDeletesWhatAKilledOneLeft()
    {
        var (recipe, list) = (Path.Combine(root, "pond.yaml"), Path.Combine(root, "read.txt"));
        await File.WriteAllTextAsync(recipe, CommandTests.Recipe);
        using var running = Process.GetProcesses().First(p => p.Id != Environment.ProcessId);
        string[] others =
        [
            UnfinishedFile.Of(list, running.Id),
            UnfinishedFile.Of(Path.Combine(root, "other.txt"), Nobody),
            $"{UnfinishedFile.Of(list, Nobody)}.txt",
        ];
        foreach (var file in (string[])[UnfinishedFile.Of(list, Nobody), .. others])
            await File.WriteAllTextAsync(file, "half");
        var ran = await ToolRun.Run("make", recipe, "--hoop", "large", "--inputs", list);
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.Equal([.. others, recipe, list], Directory.EnumerateFiles(root).ToHashSet());
        Assert.Equal([recipe], await File.ReadAllLinesAsync(list));
    }

    [Fact]
    public async Task SoDoesAFirstRecipe()
    {
        var (drawing, recipe) = (Path.Combine(root, "pond.svg"), Path.Combine(root, "pond.yaml"));
        await File.WriteAllTextAsync(
            drawing,
            "<svg xmlns='http://www.w3.org/2000/svg' width='90mm' height='90mm' viewBox='0 0 90 90'>"
                + "<rect width='90' height='90' fill='#14304f'/></svg>"
        );
        await File.WriteAllTextAsync(UnfinishedFile.Of(recipe, Nobody), "half");
        var ran = await ToolRun.Run("new", drawing, recipe);
        Assert.Equal(0, ran.ExitCode);
        Assert.Equal([drawing, recipe], Directory.EnumerateFiles(root).Order(StringComparer.Ordinal));
    }
}
