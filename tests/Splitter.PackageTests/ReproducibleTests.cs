using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;

namespace Splitter.PackageTests;

/// <summary>The packages of a commit are the same bytes, whoever packs them.</summary>
[Collection(nameof(PackedFeed))]
public sealed class ReproducibleTests(PackedFeed feed)
{
    [Fact]
    public async Task PackingAgainGivesTheSameBytes()
    {
        var again = feed.Folder();
        await PackedFeed.PackAll(again);
        var first = Sums(feed.Packages);
        Assert.Contains($"Splitter.MSBuild.{PackedFeed.Version}.nupkg", first.Keys);
        Assert.Contains($"Splitter.Tool.any.{PackedFeed.Version}.snupkg", first.Keys);
        Assert.Equal(first, Sums(again));
    }

    /// <summary>No clock, and no folder of the machine on which it was packed: ours has a name of its own.</summary>
    [Fact]
    public void NothingInAPackageTellsWhenAndWhereItWasPacked()
    {
        var here = Encoding.UTF8.GetBytes(Path.GetFullPath(PackedFeed.Metadata("Sources")));
        foreach (var path in Directory.EnumerateFiles(feed.Packages))
        {
            using var package = ZipFile.OpenRead(path);
            Assert.All(
                package.Entries,
                entry =>
                {
                    Assert.Equal(2000, entry.LastWriteTime.Year);
                    using var content = entry.Open();
                    using var bytes = new MemoryStream();
                    content.CopyTo(bytes);
                    Assert.True(bytes.ToArray().AsSpan().IndexOf(here) < 0, $"{Path.GetFileName(path)}: {entry}");
                }
            );
        }
    }

    private static SortedDictionary<string, string> Sums(string folder) =>
        new(
            Directory
                .EnumerateFiles(folder)
                .ToDictionary(
                    path => Path.GetFileName(path),
                    path => Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(path)))
                ),
            StringComparer.Ordinal
        );
}
