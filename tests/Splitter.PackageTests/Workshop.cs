using Splitter.Tests;

namespace Splitter.PackageTests;

/// <summary>A project that has recipes and nothing else, in a folder of its own.</summary>
internal sealed class Workshop(PackedFeed feed)
{
    internal string Folder { get; } = feed.Folder();

    /// <summary>With its recipes in the folder <c>recipes</c>.</summary>
    internal static Workshop With(PackedFeed feed, params string[] names)
    {
        var shop = new Workshop(feed);
        shop.Write("works.proj", Project($"Sdk=\"Splitter.MSBuild/{PackedFeed.Version}\""));
        foreach (var name in names)
            shop.Write($"recipes/{name}.yaml", Recipe());
        return shop;
    }

    internal static string Project(string attributes, string more = "") =>
        $"""
            <Project {attributes}>
              <ItemGroup>
                <SplitRecipe Include="recipes/*.yaml" />
              </ItemGroup>
              {more}
            </Project>
            """;

    /// <summary>Small and quick: one square in one part. The fourth line holds the square.</summary>
    internal static string Recipe(string square = "10 10, 40 10, 40 30, 10 30, 10 10") =>
        $$"""
            splitter: 1
            artwork:
              shapes:
                - { wkt: "POLYGON (({{square}}))", fill: "#14304f" }
            hoops:
              - { name: small, field: 130 x 180 mm }
              - { name: large, field: 200 x 300 mm }
            output: { files: [tape] }
            """;

    internal string PathOf(string file) => Path.Combine(Folder, file);

    internal void Write(string file, string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(PathOf(file))!);
        File.WriteAllText(PathOf(file), text);
    }

    /// <summary>At the detail at which MSBuild says of every target whether it had work.</summary>
    internal Task<Ran> Build(params string[] options) => feed.Dotnet(Folder, ["build", "-v", "n", .. options]);

    internal async Task<Ran> MustBuild(params string[] options)
    {
        var ran = await Build(options);
        Assert.True(ran.ExitCode == 0, ran.ToString());
        return ran;
    }

    /// <summary>Names and bytes of all parts, or of what lies in another folder.</summary>
    internal SortedDictionary<string, string> Parts(string folder = "recipes/parts")
    {
        var parts = new SortedDictionary<string, string>(StringComparer.Ordinal);
        if (Directory.Exists(PathOf(folder)))
            foreach (var path in Directory.EnumerateFiles(PathOf(folder), "*", SearchOption.AllDirectories))
                parts[Path.GetRelativePath(Folder, path).Replace('\\', '/')] = Convert.ToHexString(
                    File.ReadAllBytes(path)
                );
        return parts;
    }
}
