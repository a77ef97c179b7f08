using System.Text.RegularExpressions;

namespace Splitter.PackageTests;

/// <summary>The sample studio, built from the packages by the very commands that its CI file names.</summary>
[Collection(nameof(PackedFeed))]
public sealed partial class StudioTests(PackedFeed feed)
{
    [Fact]
    public async Task TheStudioIsBuiltAsItsCiFileSays()
    {
        var studio = feed.CopyOf("examples/studio");
        foreach (var package in Directory.EnumerateFiles(feed.Packages, "*.nupkg"))
        {
            Directory.CreateDirectory(Path.Combine(studio, "packages"));
            File.Copy(package, Path.Combine(studio, "packages", Path.GetFileName(package)));
        }
        var commands = Run().Matches(await File.ReadAllTextAsync(Path.Combine(studio, "ci.yaml")));
        Assert.Equal(3, commands.Count);
        foreach (var command in commands.Select(match => match.Groups["arguments"].Value))
        {
            var ran = await feed.Dotnet(studio, command.Split(' '));
            Assert.True(ran.ExitCode == 0, $"dotnet {command}: {ran}");
        }
        Assert.Equal(
            ["cushion", "jacket-back", "quilt-panel"],
            Directory.EnumerateDirectories(Path.Combine(studio, "parts")).Select(Path.GetFileName).Order()
        );
        var tool = await feed.Dotnet(studio, "splitter", "--version");
        Assert.Equal((0, PackedFeed.Version), (tool.ExitCode, tool.Output.Trim()));
    }

    [GeneratedRegex(@"^\s+run: dotnet (?<arguments>.+)$", RegexOptions.ExplicitCapture | RegexOptions.Multiline, 1000)]
    private static partial Regex Run();
}
