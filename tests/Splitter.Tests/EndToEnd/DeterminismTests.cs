using System.Collections.Immutable;
using System.Security.Cryptography;
using Splitter.Tool.Disk;

namespace Splitter.Tests.EndToEnd;

/// <summary>
/// The built tool as a process, in other cultures, time zones, folders and with other counts of threads, makes what the
/// library makes here: bit-by-bit identical files, as reproducible-builds.org defines it.
/// </summary>
public sealed class DeterminismTests : IDisposable
{
    private readonly string root = Directory.CreateTempSubdirectory("splitter-same-").FullName;

    public void Dispose() => Directory.Delete(root, recursive: true);

    // Turkish has two kinds of i, Kathmandu is a quarter of an hour off, St John's half an hour.
    [Theory]
    [InlineData("lighthouse-bay", "large", "tr_TR.UTF-8", "Asia/Kathmandu", "önther folder/deeper", "7")]
    [InlineData("faroe-islands", "small", "tr_TR.UTF-8", "Asia/Kathmandu", "önther folder/deeper", "7")]
    [InlineData("faroe-islands", "small", "de_DE.UTF-8", "America/St_Johns", "x", "1")]
    public async Task TheSameFilesWhereverTheyAreMade(
        string recipe,
        string hoop,
        string language,
        string zone,
        string folder,
        string jobs
    )
    {
        var here = Examples.Made(recipe, hoop).Sets.Single().Files;
        Assert.NotEmpty(here);
        Assert.Equal(
            here.ToImmutableSortedDictionary(file => file.Path, file => Sum(file.Bytes.Span), StringComparer.Ordinal),
            await Make(recipe, hoop, language, zone, folder, jobs)
        );
    }

    private async Task<ImmutableSortedDictionary<string, string>> Make(
        string recipe,
        string hoop,
        string language,
        string zone,
        string folder,
        string jobs
    )
    {
        var home = Directory.CreateDirectory(Path.Combine(root, folder)).FullName;
        Copy(home, "recipes", $"{recipe}.yaml");
        foreach (var artwork in Directory.EnumerateFiles(Repository.Path("examples", "artwork")))
            Copy(home, "examples", "artwork", Path.GetFileName(artwork));
        var ran = await Processes.Run(
            home,
            new Dictionary<string, string>(StringComparer.Ordinal)
            {
                ["LANG"] = language,
                ["LC_ALL"] = language,
                ["TZ"] = zone,
            },
            "dotnet",
            Path.Combine(AppContext.BaseDirectory, "Splitter.Tool.dll"),
            "make",
            $"recipes/{recipe}.yaml",
            "--hoop",
            hoop,
            "--jobs",
            jobs
        );
        Assert.True(ran.ExitCode == 0, ran.ToString());
        var made = Path.Combine(home, "examples", "parts", recipe);
        return Directory
            .EnumerateFiles(made, "*", SearchOption.AllDirectories)
            // Which recipe a folder belongs to, the tool alone writes.
            .Where(path => Path.GetFileName(path) != RecipeMark.Name)
            .ToImmutableSortedDictionary(
                path => Path.GetRelativePath(made, path).Replace('\\', '/'),
                path => Sum(File.ReadAllBytes(path)),
                StringComparer.Ordinal
            );
    }

    private static string Sum(ReadOnlySpan<byte> bytes) => Convert.ToHexString(SHA256.HashData(bytes));

    private static void Copy(string home, params string[] parts)
    {
        var to = Path.Combine([home, .. parts]);
        Directory.CreateDirectory(Path.GetDirectoryName(to)!);
        File.Copy(Repository.Path(parts), to);
    }
}
