namespace Splitter.Benchmarks.Figures;

/// <summary>A recipe that is planned for the table.</summary>
/// <param name="Name">How the table calls it.</param>
/// <param name="Recipe">Its recipe's text.</param>
/// <param name="Folder">What the recipe's paths are relative to.</param>
/// <param name="Hoop">Which of its hoops.</param>
internal sealed record Subject(string Name, string Recipe, string Folder, string Hoop)
{
    /// <summary>Open drawings are planned at this width, so that they need several hoopings of the common small hoop.</summary>
    private const string DrawingWidth = "400 mm";

    /// <summary>The recipes of this repository in both hoops, then the open drawings by name.</summary>
    internal static IEnumerable<Subject> All()
    {
        foreach (var recipe in (string[])["lighthouse-bay", "faroe-islands"])
        foreach (var hoop in (string[])["small", "large"])
            yield return new(
                $"{recipe}, {hoop}",
                File.ReadAllText(Repository.Find("recipes", recipe + ".yaml")),
                Repository.Find("recipes"),
                hoop
            );
        var drawings = Repository.Find("tests", "Splitter.Benchmarks", "Drawings");
        foreach (var file in Directory.GetFiles(drawings, "*.svg").Order(StringComparer.Ordinal))
            yield return new(Path.GetFileNameWithoutExtension(file), RecipeFor(file), drawings, "small");
    }

    /// <summary>A file that the recipe names.</summary>
    internal SourceRead Read(string path) => new(File.ReadAllBytes(Path.Combine(Folder, path)), Problem: null);

    private static string RecipeFor(string file) =>
        $$"""
            splitter: 1
            title: {{Path.GetFileNameWithoutExtension(file)}}
            artwork:
              file: {{Path.GetFileName(file)}}
              width: {{DrawingWidth}}
            hoops:
              - { name: small, field: 130 x 180 mm }
            output:
              folder: parts

            """;
}
