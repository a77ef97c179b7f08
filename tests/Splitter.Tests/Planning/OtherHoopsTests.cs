using System.Text;

namespace Splitter.Tests.Planning;

/// <summary>Who strikes a hoop from a recipe may have sewn the first part with another one.</summary>
public sealed class OtherHoopsTests
{
    /// <summary>A cloth that is cut to the artwork is as large as the hoop needs that is used, and no other.</summary>
    [Fact]
    public void PartsForAHoopDependOnNoOtherHoop()
    {
        const string Small = "{ name: small, field: 70 x 70 mm }";
        const string Large = "{ name: large, field: 200 x 300 mm }";
        var (alone, both) = (Made(Small), Made($"{Large}, {Small}"));
        Assert.Equal(alone.Keys, both.Keys);
        Assert.Contains(alone.Keys, path => path.EndsWith("part-B.dst", Ordinal));
        Assert.All(alone, file => Assert.Equal(file.Value, both[file.Key]));
    }

    private static SortedDictionary<string, string> Made(string hoops)
    {
        var recipe = Encoding.UTF8.GetBytes(
            $$"""
            splitter: 1
            artwork: { file: a.svg, width: 90 mm }
            hoops: [{{hoops}}]
            cloth: { size: auto, folds: { upright: centre, level: centre } }
            output: { folder: parts, files: [tape, svg] }
            """
        );
        var drawing = Encoding.UTF8.GetBytes(
            "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 90 40'><rect width='90' height='40'/></svg>"
        );
        var made = Pipeline.Make(new("recipe.yaml", recipe, _ => new(drawing, null)) { Hoop = "small" });
        Assert.True(made.Succeeded, string.Join('\n', made.Diagnostics));
        var files = Assert
            .Single(made.Value.Sets)
            .Files.Where(f => f.Path.EndsWith(".dst", Ordinal) || f.Path.EndsWith(".svg", Ordinal))
            .ToDictionary(f => f.Path, f => Convert.ToHexString(f.Bytes.Span));
        return new(files, StringComparer.Ordinal);
    }

    private const StringComparison Ordinal = StringComparison.Ordinal;
}
