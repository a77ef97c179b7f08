namespace Splitter.Tests.Architecture;

/// <summary>How the sources are laid out, as far as no formatter sees to it: comments and texts.</summary>
public sealed class LayoutTests
{
    /// <summary>What the formatter breaks code at (.csharpierrc.json): two files fit side by side on a screen.</summary>
    private const int MostColumns = 120;

    /// <summary>Longer ones have more than one job.</summary>
    private const int MostLines = 250;

    [Fact]
    public void NoLineIsTooWide() =>
        Assert.Empty(
            Sources()
                .SelectMany(file =>
                    File.ReadLines(file)
                        .Select((line, i) => (line, at: $"{file}({i + 1})"))
                        .Where(each => each.line.Length > MostColumns)
                        .Select(each => each.at)
                )
        );

    [Fact]
    public void NoFileIsTooLong() => Assert.DoesNotContain(Sources(), file => File.ReadLines(file).Count() > MostLines);

    private static IEnumerable<string> Sources() =>
        Directory
            .EnumerateFiles(Repository.Path("src"), "*.cs", SearchOption.AllDirectories)
            .Where(file => !Path.GetRelativePath(Repository.Root, file).Split('/', '\\').Contains("obj"));
}
