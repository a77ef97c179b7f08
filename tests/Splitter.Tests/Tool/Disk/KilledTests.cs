using System.Collections.Immutable;
using System.Diagnostics;
using System.Security.Cryptography;
using Splitter.Tool.Disk;

namespace Splitter.Tests.Tool.Disk;

/// <summary>
/// The built tool as a process, killed without warning (SIGKILL on Unix) at any moment of a run that replaces a set. What the
/// next person to look finds is one whole set and all that is theirs. <c>SPLITTER_EXPLORE=N</c> kills N times as often.
/// </summary>
public sealed class KilledTests : IDisposable
{
    /// <summary>Runs that are killed while they write when nobody explores.</summary>
    private const int Some = 4;

    /// <summary>Tries for each of them, at most: a run may end before it is killed.</summary>
    private const int Tries = 4;

    /// <summary>As many of these for one that is killed at any moment of its life, mostly before it writes.</summary>
    private const int Seldom = 4;

    /// <summary>What is the person's: so many that moving it to the new set takes about as long as writing that.</summary>
    private static readonly string[] Notes =
    [
        "notes.txt",
        .. Enumerable.Range(1, 500).Select(i => FormattableString.Invariant($"part-A.photo-{i}.jpg")),
    ];

    /// <summary>The recipe as it was, and as it is: that has more files.</summary>
    private static readonly string Near = Recipe("POLYGON ((10 10, 40 10, 40 30, 10 10))", "[tape, csv]"),
        Far = Recipe("POLYGON ((90 10, 99 10, 99 30, 90 10))", "[tape, csv, svg, worksheet]");

    private readonly string root = Directory.CreateTempSubdirectory("splitter-killed-").FullName;

    private string Output => Path.Combine(root, "parts");

    private string Set => Path.Combine(Output, "small");

    private SetFolder Folder => new(Output, "small");

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Fact]
    public async Task KilledAtAnyMomentThereIsOneWholeSet()
    {
        _ = await Made(Far);
        foreach (var name in Notes)
            Write(Path.Combine("parts", "small", name), $"mine: {name}");
        var near = await Made(Near);
        var far = await Made(Far);

        // The moments differ from run to run, and nothing of the test depends on them.
        var random = new Random(1);
        var kills = Some * (Property.Exploring ?? 1);
        var hits = 0;
        for (var i = 0; hits < kills && i < kills * Tries; i++)
        {
            var recipe = i % 2 == 0 ? Near : Far;
            if (i % Seldom == 0)
            {
                await KillAtAnyMoment(recipe, far.Took, random);
                AssertWhole(near.Files, far.Files);
            }
            if (await KillAtWork(recipe, random.Next(1, far.Changes + 1)))
                hits++;
            AssertWhole(near.Files, far.Files);
        }

        Assert.True(hits > 0, "no run was killed while it wrote");
        Assert.Equal(near.Files, (await Made(Near)).Files);
        Assert.All(Notes, name => Assert.Equal($"mine: {name}", File.ReadAllText(Path.Combine(Set, name))));
        Assert.Equal(["small"], Directory.EnumerateFileSystemEntries(Output).Select(Path.GetFileName));
    }

    /// <summary>Mostly before it writes anything, or when it has ended.</summary>
    private async Task KillAtAnyMoment(string recipe, TimeSpan whole, Random random)
    {
        using var process = Start(recipe);
        await Task.Delay(whole * (1.1 * random.NextDouble()));
        await Kill(process);
    }

    /// <summary>Once the new set is being written, where a kill hurts most.</summary>
    /// <param name="changes">How many changes of the folder are seen before it is killed.</param>
    /// <returns>Whether it was hit before the new set stood in place and the old one was gone.</returns>
    private async Task<bool> KillAtWork(string recipe, int changes)
    {
        using var process = Start(recipe);
        _ = Watched(process, changes);
        await Kill(process);
        string[] siblings = [Folder.Unfinished, Folder.Exchanged, Folder.Aside];
        return process.ExitCode != 0 && siblings.Any(Directory.Exists);
    }

    /// <summary>Looks at the folder, and from the first change on without a pause: replacing a set takes some 20 ms.</summary>
    /// <returns>How many changes were seen before the process ended, or as many as are enough.</returns>
    private int Watched(Process process, int enough = int.MaxValue)
    {
        var (seen, last) = (0, Glance());
        while (!process.HasExited && seen < enough)
        {
            var now = Glance();
            if (now != last)
                seen++;
            else if (seen == 0)
                Thread.Sleep(1);
            last = now;
        }
        return seen;
    }

    /// <summary>How many files there are in each sibling of the set.</summary>
    private (int Unfinished, int Exchanged) Glance() => (Count(Folder.Unfinished), Count(Folder.Exchanged));

    private static int Count(string folder)
    {
        try
        {
            return Directory.EnumerateFiles(folder).Count();
        }
        catch (DirectoryNotFoundException)
        {
            return -1;
        }
    }

    private static async Task Kill(Process process)
    {
        process.Kill();
        await process.WaitForExitAsync();
    }

    /// <summary>
    /// The set holds one recipe's files and no other, byte for byte; what is the person's lies there, or beside it until the
    /// next run.
    /// </summary>
    private void AssertWhole(
        ImmutableSortedDictionary<string, string> near,
        ImmutableSortedDictionary<string, string> far
    )
    {
        var there = Sums(Set);
        Assert.True(there.SequenceEqual(near) || there.SequenceEqual(far), string.Join(", ", there.Keys));
        var texts = Directory
            .EnumerateFiles(Output, "*", SearchOption.AllDirectories)
            .Where(file => Notes.Contains(Path.GetFileName(file)))
            .Select(File.ReadAllText)
            .ToHashSet();
        Assert.All(Notes, name => Assert.Contains($"mine: {name}", texts));
    }

    /// <summary>A run to its end: the files of its set, how long it took, and the changes of the folder that were seen.</summary>
    private async Task<(ImmutableSortedDictionary<string, string> Files, TimeSpan Took, int Changes)> Made(
        string recipe
    )
    {
        var watch = Stopwatch.StartNew();
        using var process = Start(recipe);
        var changes = Watched(process);
        await process.WaitForExitAsync();
        Assert.Equal(0, process.ExitCode);
        return (Sums(Set), watch.Elapsed, changes);
    }

    private Process Start(string recipe)
    {
        Write("piece.yaml", recipe);
        return Processes.StartTool(root, "make", "piece.yaml", "--hoop", "small");
    }

    private static ImmutableSortedDictionary<string, string> Sums(string folder) =>
        Directory
            .EnumerateFiles(folder)
            .Where(file => !Notes.Contains(Path.GetFileName(file)))
            .ToImmutableSortedDictionary(
                file => Path.GetFileName(file),
                file => Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(file))),
                StringComparer.Ordinal
            );

    private void Write(string file, string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(Path.Combine(root, file))!);
        File.WriteAllText(Path.Combine(root, file), text);
    }

    private static string Recipe(string shape, string files) =>
        $$"""
            splitter: 1
            artwork: { shapes: [{ wkt: "{{shape}}", fill: "#14304f" }] }
            hoops: [{ name: small, field: 130 x 180 mm }]
            output: { folder: parts, files: {{files}} }
            """;
}
