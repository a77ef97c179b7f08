using Splitter.Benchmarks.Speed;

namespace Splitter.Benchmarks.Catalogue;

/// <summary>A project with recipes, in a folder of its own, with targets and tool as their package has them.</summary>
internal sealed class Shop : IDisposable
{
    private const string Project = """
        <Project>
          <Import Project="../package/Sdk/Sdk.props" />
          <ItemGroup>
            <SplitRecipe Include="recipes/*.yaml" />
          </ItemGroup>
          <Import Project="../package/Sdk/Sdk.targets" />
        </Project>
        """;

    private const string Triangle = """
        splitter: 1
        artwork: { shapes: [{ wkt: "POLYGON ((10 10, 40 10, 40 30, 10 10))", fill: "#14304f" }] }
        hoops: [{ name: small, field: 130 x 180 mm }]
        output: { files: [tape] }
        """;

    private readonly string root = Directory.CreateTempSubdirectory("splitter-catalogue-").FullName;

    internal Shop()
    {
        foreach (var folder in new[] { "build", "Sdk" })
        {
            Directory.CreateDirectory(At("package", folder));
            foreach (var file in Directory.EnumerateFiles(Repository.Find("src", "Splitter.MSBuild", folder)))
                File.Copy(file, At("package", folder, Path.GetFileName(file)));
        }
        Done(
            Measured.Run(
                "dotnet",
                "publish",
                Repository.Find("src", "Splitter.Tool"),
                "-c",
                "Release",
                "-p:UseAppHost=false",
                "-o",
                At("package", "tools", "any")
            )
        );
        Directory.CreateDirectory(At("shop"));
        File.WriteAllText(At("shop", "shop.proj"), Project);
    }

    public void Dispose() => Directory.Delete(root, recursive: true);

    /// <summary>As many recipes as there are asked for, none of them made yet.</summary>
    internal void Fill(int count)
    {
        foreach (var folder in new[] { At("shop", "recipes"), At("shop", "obj") })
            if (Directory.Exists(folder))
                Directory.Delete(folder, recursive: true);
        Directory.CreateDirectory(At("shop", "recipes"));
        foreach (var design in Design.Catalogue(count))
            File.WriteAllText(At("shop", design.Name), Triangle);
    }

    /// <summary>One process does all of it, so that all of it is measured.</summary>
    internal Measured Build(params string[] options) =>
        Done(
            Measured.Run(
                "dotnet",
                ["build", At("shop", "shop.proj"), "-m:1", "-nodeReuse:false", "-v", "q", .. options]
            )
        );

    internal Measured Make(DesignKind kind) =>
        Done(
            Measured.Run(
                "dotnet",
                At("package", "tools", "any", "Splitter.Tool.dll"),
                "make",
                Recipe(kind),
                "--out",
                At("made", $"{kind}")
            )
        );

    private string Recipe(DesignKind kind)
    {
        if (kind == DesignKind.Panel)
            return Repository.Find("examples", "studio", "recipes", "jacket-back.yaml");
        if (kind == DesignKind.Hanging)
            return Repository.Find("recipes", "lighthouse-bay.yaml");
        File.Copy(
            Repository.Find("tests", "Splitter.Measures", "Drawings", "outline-icons", "sailboat.svg"),
            At("sailboat.svg"),
            overwrite: true
        );
        File.WriteAllText(
            At("motif.yaml"),
            """
            splitter: 1
            artwork: { file: sailboat.svg, width: 100 mm }
            hoops: [{ name: small, field: 130 x 180 mm }]
            """
        );
        return At("motif.yaml");
    }

    private static Measured Done(Measured? measured) =>
        measured ?? throw new InvalidOperationException("a build, or the tool, failed");

    private string At(params ReadOnlySpan<string> names) => Path.Combine([root, .. names]);
}
