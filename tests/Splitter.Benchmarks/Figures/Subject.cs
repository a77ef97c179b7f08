using System.Text;

namespace Splitter.Benchmarks.Figures;

/// <summary>A recipe that is planned for the table.</summary>
/// <param name="Name">How the table calls it.</param>
/// <param name="Recipe">Its recipe's text.</param>
/// <param name="Hoop">Which of its hoops.</param>
/// <param name="Read">The files that it names.</param>
internal sealed record Subject(string Name, string Recipe, string Hoop, ReadSource Read)
{
    /// <summary>Open drawings are planned at this width, so that they need several hoopings of the common small hoop.</summary>
    private const string DrawingWidth = "400 mm";

    /// <summary>The recipes of this repository in both hoops, the open drawings by name, and generated work.</summary>
    internal static IEnumerable<Subject> All()
    {
        foreach (var recipe in (string[])["lighthouse-bay", "faroe-islands"])
        foreach (var hoop in (string[])["small", "large"])
            yield return new(
                $"{recipe}, {hoop}",
                File.ReadAllText(Repository.Find("recipes", recipe + ".yaml")),
                hoop,
                In(Repository.Find("recipes"))
            );
        var drawings = Repository.Find("tests", "Splitter.Benchmarks", "Drawings");
        foreach (var file in Directory.GetFiles(drawings, "*.svg").Order(StringComparer.Ordinal))
            yield return new(
                Path.GetFileNameWithoutExtension(file),
                RecipeFor(Path.GetFileName(file), DrawingWidth),
                "small",
                In(drawings)
            );
        yield return Generated("bedspread", Bedspread.Drawing());
        yield return Generated("bedspread on a ground", Bedspread.Drawing(Bedspread.Ground));
    }

    private static Subject Generated(string name, string drawing) =>
        new(
            $"{name}, generated",
            RecipeFor("bedspread.svg", $"{Bedspread.Side} mm"),
            "small",
            _ => new(Encoding.UTF8.GetBytes(drawing), Problem: null)
        );

    private static ReadSource In(string folder) => path => new(File.ReadAllBytes(Path.Combine(folder, path)), null);

    private static string RecipeFor(string file, string width) =>
        $$"""
            splitter: 1
            artwork:
              file: {{file}}
              width: {{width}}
            hoops:
              - { name: small, field: 130 x 180 mm }
            output:
              folder: parts

            """;
}
