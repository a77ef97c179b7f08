using System.Text.RegularExpressions;
using Splitter.Recipes;

namespace Splitter.Tests.Architecture;

/// <summary>What the documents say is there.</summary>
public sealed partial class DocumentTests
{
    [Theory]
    [InlineData("README.md")]
    [InlineData("DEVELOPERS.md")]
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
        if (document != "examples/README.md")
            Assert.NotEmpty(links);
    }

    [Fact]
    public void TheRecipeInTheReadMeIsOne()
    {
        var recipe = Example().Match(File.ReadAllText(Repository.Path("README.md")).ReplaceLineEndings("\n"));
        Assert.True(recipe.Success);
        var read = RecipeReader.Read("two-sails.yaml", System.Text.Encoding.UTF8.GetBytes(recipe.Groups["yaml"].Value));
        Assert.True(read.Succeeded, string.Join("\n", read.Diagnostics));
        Assert.Empty(read.Diagnostics);
    }

    [GeneratedRegex(@"\]\((?<to>[^)#]+)\)", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Link();

    [GeneratedRegex("```yaml\n(?<yaml>.*?)```", RegexOptions.ExplicitCapture | RegexOptions.Singleline, 1000)]
    private static partial Regex Example();
}
