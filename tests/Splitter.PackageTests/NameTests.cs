using System.Text.RegularExpressions;

namespace Splitter.PackageTests;

/// <summary>Names of recipes and folders that mean something to MSBuild or to a shell.</summary>
[Collection(nameof(PackedFeed))]
public sealed class NameTests(PackedFeed feed)
{
    private static readonly string[] Names =
    [
        "a$HOME $(id)",
        "b`id`",
        "it's",
        "d;e=f",
        "100%",
        "%PATH%",
        "(g) [h] {i}",
        "@(j) %(k)",
        "!l #m ~n, o & p ^q",
    ];

    [Fact]
    public async Task ARecipeMayHaveAnyName()
    {
        var shop = Workshop.With(feed, Names);
        string[] options = ["-p:SplitterHoop=small", "-p:SplitterOutput=it%27s $(made) 50%25 %3B here"];
        await shop.MustBuild(options);
        const string Folder = "it's $(made) 50% ; here";
        Assert.Equal(
            Names.Select(name => $"{Folder}/{name}/small/part-A.dst").Order(StringComparer.Ordinal),
            shop.Parts(Folder).Keys.Where(name => name.EndsWith(".dst", StringComparison.Ordinal))
        );
        await shop.MustBuild([.. options, "-p:SplitterMode=check"]);
        Assert.Equal(
            Names.Length,
            Regex.Count((await shop.MustBuild(options)).Output, "Skipping target \"_SplitterMake\"")
        );
        await feed.Dotnet(shop.Folder, "clean");
        Assert.Empty(shop.Parts(Folder));
    }

    [Theory]
    [InlineData("e%41", "SPL9058")]
    [InlineData("line\nbreak", "SPL9058")]
    [InlineData("\"r\"", "SPL1044")]
    [InlineData("back\\slash", "SPL9057")]
    public async Task ANameThatABuildCannotHaveIsRefused(string name, string code)
    {
        if (OperatingSystem.IsWindows() && !name.Contains('%', StringComparison.Ordinal))
            return;
        var shop = Workshop.With(feed, name);
        var ran = await shop.Build();
        Assert.Equal(1, ran.ExitCode);
        Assert.Contains($"error {code}: ", ran.Output, StringComparison.Ordinal);
        Assert.Empty(shop.Parts());
    }
}
