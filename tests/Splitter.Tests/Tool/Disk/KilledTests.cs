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
    /// <summary>Runs that are killed while they write when nobody explores; about as many are killed at any moment.</summary>
    private const int Some = 4;

    /// <summary>
    /// Tries for each of them: a run may end before it is killed. More are no bad luck, but a run that cannot be hit.
    /// </summary>
    private const int Tries = 10;

    /// <summary>What is the person's: so many that moving it to the new set takes about as long as writing that.</summary>
    private static readonly string[] Notes =
    [
        "notes.txt",
        .. Enumerable.Range(1, 500).Select(i => FormattableString.Invariant($"part-A.photo-{i}.jpg")),
    ];

    private readonly string root = Directory.CreateTempSubdirectory("splitter-killed-").FullName;

    private string Output => Path.Combine(root, "parts");

    private string Set => Path.Combine(Output, "small");

    private string Unfinished => new SetFolder(Output, "small").Unfinished;

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Fact]
    public async Task KilledAtAnyMomentThereIsOneWholeSet()
    {
        // Two recipes for one folder; the second has more files.
        Write("near.yaml", Recipe("10 10, 40 10, 40 30, 10 30, 10 10", "[tape, csv]"));
        Write("far.yaml", Recipe("10 10, 240 10, 240 30, 10 30, 10 10", "[tape, csv, svg, worksheet]"));
        var (near, _) = await Made("near.yaml");
        var (far, whole) = await Made("far.yaml");
        foreach (var name in Notes)
            Write(Path.Combine("parts", "small", name), $"mine: {name}");

        // The moments differ from run to run, and nothing of the test depends on them.
        var random = new Random(1);
        var kills = Some * (Property.Exploring ?? 1);
        var hits = 0;
        for (var i = 0; hits < kills; i++)
        {
            Assert.True(i < kills * Tries, $"only {hits} of {i} runs were killed while they wrote");
            var (one, other) = i % 2 == 0 ? ("near.yaml", "far.yaml") : ("far.yaml", "near.yaml");
            await KillAtAnyMoment(one, whole, random);
            AssertWhole(near, far);
            if (await KillAtWork(other, random))
                hits++;
            AssertWhole(near, far);
        }

        Assert.Equal(near, (await Made("near.yaml")).Files);
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
    /// <returns>Whether it was hit before the new set stood in place and the old one was gone.</returns>
    private async Task<bool> KillAtWork(string recipe, Random random)
    {
        using var process = Start(recipe);
        var begun = DateTime.UtcNow;
        while (!process.HasExited && Directory.GetLastWriteTimeUtc(Unfinished) < begun)
            await Task.Delay(1);
        // Replacing the set takes some tens of milliseconds.
        await Task.Delay(TimeSpan.FromMilliseconds(random.NextDouble() * 20));
        await Kill(process);
        var folder = new SetFolder(Output, "small");
        string[] siblings = [folder.Unfinished, folder.Exchanged, folder.Aside];
        return process.ExitCode != 0 && siblings.Any(Directory.Exists);
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

    /// <summary>A run to its end: the files of its set, and how long it took.</summary>
    private async Task<(ImmutableSortedDictionary<string, string> Files, TimeSpan Took)> Made(string recipe)
    {
        var watch = Stopwatch.StartNew();
        using var process = Start(recipe);
        await process.WaitForExitAsync();
        Assert.Equal(0, process.ExitCode);
        return (Sums(Set), watch.Elapsed);
    }

    private Process Start(string recipe) =>
        Process.Start(
            new ProcessStartInfo(
                "dotnet",
                [Path.Combine(AppContext.BaseDirectory, "Splitter.Tool.dll"), "make", recipe, "--hoop", "small"]
            )
            {
                WorkingDirectory = root,
                UseShellExecute = false,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            }
        )!;

    private static ImmutableSortedDictionary<string, string> Sums(string folder) =>
        Directory
            .EnumerateFiles(folder)
            .Where(file => !Notes.Contains(Path.GetFileName(file)))
            .ToImmutableSortedDictionary(
                file => Path.GetFileName(file),
                file => Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(file))),
                StringComparer.Ordinal
            );

    private void Write(string file, string text) => File.WriteAllText(Path.Combine(root, file), text);

    private static string Recipe(string ring, string files) =>
        $$"""
            splitter: 1
            artwork: { shapes: [{ wkt: "POLYGON (({{ring}}))", fill: "#14304f" }] }
            hoops: [{ name: small, field: 130 x 180 mm }]
            output: { folder: parts, files: {{files}} }
            """;
}
