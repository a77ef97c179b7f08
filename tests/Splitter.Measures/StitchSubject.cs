using System.Collections.Immutable;
using System.Reflection;
using System.Text;

namespace Splitter.Measures;

/// <summary>Artwork that is sewn and measured.</summary>
/// <param name="Name">How tables call it.</param>
/// <param name="Request">What the pipeline is asked for.</param>
/// <param name="Artwork">The SVG that an independent renderer draws.</param>
public sealed record StitchSubject(string Name, Request Request, string Artwork)
{
    /// <summary>Finished width of the open drawings: an icon of one hooping, with strokes 10 mm wide; a flag of two or more.</summary>
    private static readonly ImmutableArray<(string Folder, string Width)> Folders =
    [
        ("outline-icons", "120 mm"),
        ("flags", "200 mm"),
    ];

    /// <summary>Finished width of the coastline, as its recipe has it, mm.</summary>
    private const double CoastWidth = 260;

    private static readonly string Root = Path.GetFullPath(
        typeof(StitchSubject)
            .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
            .Single(a => a.Key == "RepositoryDirectory")
            .Value!
    );

    /// <summary>Recipes and hoops.</summary>
    public static ImmutableArray<(string Recipe, string Hoop)> Recipes { get; } =
    [("lighthouse-bay", "small"), ("lighthouse-bay", "large"), ("faroe-islands", "small"), ("faroe-islands", "large")];

    /// <summary>Folders and names of the open drawings.</summary>
    public static ImmutableArray<(string Folder, string Name)> Drawings { get; } =
    [
        .. Folders.SelectMany(f =>
            Directory
                .GetFiles(FolderOf(f.Folder), "*.svg")
                .Select(file => (f.Folder, Path.GetFileNameWithoutExtension(file)))
                .OrderBy(d => d.Item2, StringComparer.Ordinal)
        ),
    ];

    /// <summary>A recipe of this repository in one of its hoops.</summary>
    public static StitchSubject OfRecipe(string recipe, string hoop)
    {
        var folder = Path.Combine(Root, "recipes");
        return new(
            $"{recipe}, {hoop}",
            new(
                recipe + ".yaml",
                File.ReadAllBytes(Path.Combine(folder, recipe + ".yaml")),
                path => new(File.ReadAllBytes(Path.Combine(folder, path)), null)
            )
            {
                Hoop = hoop,
            },
            ArtworkOf(recipe)
        );
    }

    /// <summary>An open drawing with nothing but usual settings.</summary>
    public static StitchSubject OfDrawing(string folder, string name)
    {
        var bytes = File.ReadAllBytes(Path.Combine(FolderOf(folder), name + ".svg"));
        var recipe = $$"""
            splitter: 1
            artwork: { file: {{name}}.svg, width: {{Folders.Single(f => f.Folder == folder).Width}} }
            hoops: [{ name: small, field: 130 x 180 mm }]
            output: { folder: parts, files: [tape] }
            """;
        return new(
            name,
            new(name + ".yaml", Encoding.UTF8.GetBytes(recipe), _ => new(bytes, null)),
            Encoding.UTF8.GetString(bytes)
        );
    }

    private static string ArtworkOf(string recipe)
    {
        var file = Path.Combine(Root, "examples", "artwork", recipe);
        return File.Exists(file + ".svg")
            ? File.ReadAllText(file + ".svg")
            : GeoJsonPicture.Of(File.ReadAllText(file + ".geojson"), CoastWidth);
    }

    private static string FolderOf(string folder) =>
        Path.Combine(Root, "tests", "Splitter.Measures", "Drawings", folder);
}
