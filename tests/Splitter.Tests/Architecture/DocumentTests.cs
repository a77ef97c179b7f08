using System.Text;
using System.Text.RegularExpressions;
using Splitter.Tool.Commands.Plans;

namespace Splitter.Tests.Architecture;

/// <summary>What the documents say is there.</summary>
public sealed partial class DocumentTests
{
    [Theory]
    [InlineData("README.md")]
    [InlineData("DEVELOPERS.md")]
    [InlineData("src/Splitter.MSBuild/REPOSITORY.md")]
    [InlineData("src/Splitter.Tool/ANSWERS.md")]
    [InlineData("examples/README.md")]
    public void LinksLeadToFiles(string document)
    {
        var folder = Path.GetDirectoryName(Repository.Path(document))!;
        var links = Link()
            .Matches(File.ReadAllText(Repository.Path(document)))
            .Select(m => m.Groups["to"].Value)
            .ToArray();
        Assert.All(
            links.Where(to => !to.Contains("://", StringComparison.Ordinal)),
            to => Assert.True(Path.Exists(Path.Combine(folder, to)), $"{document} links to {to}, which is not there")
        );
        if (document is not ("examples/README.md" or "src/Splitter.Tool/ANSWERS.md"))
            Assert.NotEmpty(links);
    }

    [Fact]
    public void TheRecipeInTheReadMeIsMadeWithoutARemark()
    {
        var recipe = Example().Match(File.ReadAllText(Repository.Path("README.md")).ReplaceLineEndings("\n"));
        Assert.True(recipe.Success);
        var made = Pipeline.Make(
            new("two-sails.yaml", Encoding.UTF8.GetBytes(recipe.Groups["yaml"].Value), _ => default)
        );
        Assert.Empty(made.Diagnostics);
        Assert.NotEmpty(made.Value.Sets.Single().Parts);
    }

    /// <summary>What the demo's plan costs is told as the command tells it, all but the small hoop's own tables.</summary>
    [Fact]
    public async Task ThePlanInTheReadMeIsWhatTheCommandTells()
    {
        var outlook = Examples.Planned("lighthouse-bay", "small", "large");
        var all = PlanText.Of(PlanDocument.Of("recipes/lighthouse-bay.yaml", outlook));
        var (small, large) = (
            all.IndexOf("hoop small,", StringComparison.Ordinal),
            all.IndexOf("hoop large,", StringComparison.Ordinal)
        );
        Assert.InRange(small, 1, large);
        var told = all.Remove(small, large - small);
        var file = Repository.Path("README.md");
        var text = (await File.ReadAllTextAsync(file)).ReplaceLineEndings("\n");
        var block = ReadMePlan().Match(text).Groups["plan"];
        Assert.True(block.Success);
        if (Golden.Accepting)
            await File.WriteAllTextAsync(file, text.Remove(block.Index, block.Length).Insert(block.Index, told));
        else
            Assert.Equal(told, block.Value);
    }

    [GeneratedRegex(
        "### What would another hoop cost[?]\n.*?\n```\n(?<plan>.*?)```\n",
        RegexOptions.ExplicitCapture | RegexOptions.Singleline,
        1000
    )]
    private static partial Regex ReadMePlan();

    [GeneratedRegex(@"\]\((?<to>[^)#]+)\)", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Link();

    [GeneratedRegex("```yaml\n(?<yaml>.*?)```", RegexOptions.ExplicitCapture | RegexOptions.Singleline, 1000)]
    private static partial Regex Example();
}
