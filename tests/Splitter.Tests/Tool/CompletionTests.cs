using System.Globalization;

namespace Splitter.Tests.Tool;

/// <summary>What shells are told, by the directive that dotnet-suggest asks with.</summary>
public sealed class CompletionTests : IDisposable
{
    private readonly string root = Directory.CreateTempSubdirectory("splitter-").FullName;

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Theory]
    [InlineData("splitter ins", "inspect")]
    [InlineData("splitter make --ho", "--hoop")]
    [InlineData("splitter check --format ", "json")]
    [InlineData("splitter inspect --as d", "density")]
    public async Task CommandsOptionsAndTheirWordsAreOffered(string line, string word) =>
        Assert.Contains(word, await Offered(line));

    [Fact]
    public async Task RecipesAndFoldersAreOfferedAndNothingElse()
    {
        foreach (var name in new[] { "bay.yaml", "bar.yml", "bag.svg", "sea.yaml" })
            await File.WriteAllTextAsync(Path.Combine(root, name), "");
        Directory.CreateDirectory(Path.Combine(root, "basket"));
        Assert.Equal(
            [$"{root}/bar.yml", $"{root}/basket/", $"{root}/bay.yaml"],
            await Offered($"splitter make {root}/ba")
        );
        Assert.Empty(await Offered($"splitter make {root}/nowhere/ba"));
    }

    [Fact]
    public async Task HoopsOfTheRecipesAreOffered()
    {
        string Recipe(string name, string hoops)
        {
            var file = Path.Combine(root, name);
            File.WriteAllText(file, $"splitter: 1\nartwork: {{ file: bay.svg }}\nhoops: [{hoops}]\n");
            return file;
        }
        const string Small = "{ name: small, field: 130 x 180 mm }";
        const string Large = "{ name: large, field: 200 x 300 mm }";
        var (both, one) = (Recipe("both.yaml", $"{Small}, {Large}"), Recipe("one.yaml", Small));
        Assert.Equal(["all", "large", "small"], await Offered($"splitter plan {both} --hoop "));
        Assert.Equal(["small"], await Offered($"splitter make {both} --hoop s"));
        Assert.Equal(["all", "small"], await Offered($"splitter check {both} {one} --hoop "));
        Assert.Equal(["large", "small"], await Offered($"splitter realign {both} --hoop "));
        Assert.Equal(["all"], await Offered($"splitter make {root}/none.yaml --hoop "));
    }

    private static async Task<string[]> Offered(string line)
    {
        var ran = await ToolRun.Run($"[suggest:{line.Length.ToString(CultureInfo.InvariantCulture)}]", line);
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        return ran.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }
}
