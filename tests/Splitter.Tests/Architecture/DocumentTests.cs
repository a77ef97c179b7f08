using System.Text;
using System.Text.RegularExpressions;

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

    [GeneratedRegex(@"\]\((?<to>[^)#]+)\)", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Link();

    [GeneratedRegex("```yaml\n(?<yaml>.*?)```", RegexOptions.ExplicitCapture | RegexOptions.Singleline, 1000)]
    private static partial Regex Example();
}
