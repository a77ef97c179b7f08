using System.IO.Compression;
using Splitter.Tests;

namespace Splitter.PackageTests;

/// <summary>What a user has after installing: the commands, on a small work of three shapes in two parts or more.</summary>
[Collection(nameof(PackedFeed))]
public sealed class InstalledToolTests(PackedFeed feed) : IAsyncLifetime
{
    private const string Recipe = """
        splitter: 1
        title: Two sails
        artwork:
          shapes:
            - { wkt: "POLYGON ((10 190, 100 10, 100 190, 10 190))", id: mainsail, fill: "#14304f" }
            - { wkt: "POLYGON ((108 190, 108 40, 190 190, 108 190))", id: jib, fill: "#c23b2e" }
            - { wkt: "LINESTRING (104 4, 104 200)", id: mast, stroke: "#76584a", stroke-width: 2 mm }
        hoops:
          - { name: small, field: 130 x 180 mm }
        overlap: { seams: straight }
        output: { folder: parts/sails }
        """;

    private string Tools => Path.Combine(feed.Packages, "..", "tools");

    public async Task InitializeAsync()
    {
        if (Directory.Exists(Tools))
            return;
        var ran = await feed.Dotnet(
            feed.Folder(),
            "tool",
            "install",
            "Splitter.Tool",
            "--version",
            PackedFeed.Version,
            "--tool-path",
            Tools
        );
        Assert.True(ran.ExitCode == 0, ran.ToString());
    }

    public Task DisposeAsync() => Task.CompletedTask;

    private Task<Ran> Splitter(string folder, params string[] arguments) =>
        feed.Run(folder, Path.Combine(Tools, "splitter"), arguments);

    [Fact]
    public async Task VersionIsThePackages()
    {
        var ran = await Splitter(feed.Folder(), "--version");
        Assert.Equal((0, PackedFeed.Version), (ran.ExitCode, ran.Output.Trim()));
    }

    [Fact]
    public async Task MakeThenCheck()
    {
        var folder = await Made();
        var set = Path.Combine(folder, "parts", "sails", "small");
        Assert.Contains("manifest.json", Files(set).Keys);
        Assert.Contains("part-B.dst", Files(set).Keys);
        var check = await Splitter(folder, "check", "sails.yaml");
        Assert.True(check.ExitCode == 0, check.ToString());
    }

    [Fact]
    public async Task ASecondMakeGivesTheSameBytes()
    {
        var folder = await Made();
        var first = Files(folder);
        var ran = await Splitter(folder, "make", "sails.yaml", "--jobs", "1");
        Assert.True(ran.ExitCode == 0, ran.ToString());
        Assert.Equal(first, Files(folder));
    }

    /// <summary>Code that was compiled ahead of time computes as code that is compiled while it runs.</summary>
    [Fact]
    public async Task ThePortableToolGivesTheSameBytes()
    {
        var folder = await Made();
        var first = Files(folder);
        var portable = feed.Folder();
        await ZipFile.ExtractToDirectoryAsync(
            Path.Combine(feed.Packages, $"Splitter.Tool.any.{PackedFeed.Version}.nupkg"),
            portable
        );
        var tool = Directory.EnumerateFiles(portable, "Splitter.Tool.dll", SearchOption.AllDirectories).Single();
        var ran = await feed.Dotnet(folder, "exec", tool, "make", "sails.yaml");
        Assert.True(ran.ExitCode == 0, ran.ToString());
        Assert.Equal(first, Files(folder));
    }

    /// <summary>The jib's top lies half a millimetre higher: only its parts differ, and the check says which.</summary>
    [Fact]
    public async Task CheckTellsWhatACoordinateChanged()
    {
        var folder = await Made();
        var recipe = Path.Combine(folder, "sails.yaml");
        await File.WriteAllTextAsync(recipe, Recipe.Replace("108 40", "108 39.5", StringComparison.Ordinal));
        var check = await Splitter(folder, "check", "sails.yaml");
        Assert.True(check.ExitCode == 1, check.ToString());
        Assert.Matches("part [A-Z]", check.Output + check.Error);
        Assert.Contains("jib", check.Output + check.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task AWrongRecipeIsRefusedWithItsLine()
    {
        var folder = await Made();
        var first = Files(Path.Combine(folder, "parts"));
        var recipe = Path.Combine(folder, "sails.yaml");
        await File.WriteAllTextAsync(recipe, Recipe.Replace("field:", "feild:", StringComparison.Ordinal));
        var make = await Splitter(folder, "make", "sails.yaml");
        Assert.Equal(2, make.ExitCode);
        Assert.Contains("sails.yaml(9,", make.Error, StringComparison.Ordinal);
        Assert.Contains("feild", make.Error, StringComparison.Ordinal);
        Assert.Equal("", make.Output);
        Assert.Equal(first, Files(Path.Combine(folder, "parts")));
    }

    private async Task<string> Made()
    {
        var folder = feed.Folder();
        await File.WriteAllTextAsync(Path.Combine(folder, "sails.yaml"), Recipe);
        var ran = await Splitter(folder, "make", "sails.yaml");
        Assert.True(ran.ExitCode == 0, ran.ToString());
        return folder;
    }

    /// <summary>Names and contents of a folder, at all depths.</summary>
    private static SortedDictionary<string, string> Files(string folder) =>
        new(
            Directory
                .EnumerateFiles(folder, "*", SearchOption.AllDirectories)
                .ToDictionary(
                    path => Path.GetRelativePath(folder, path).Replace('\\', '/'),
                    path => Convert.ToHexString(File.ReadAllBytes(path))
                ),
            StringComparer.Ordinal
        );
}
