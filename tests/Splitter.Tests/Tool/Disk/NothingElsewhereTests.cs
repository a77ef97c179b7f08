namespace Splitter.Tests.Tool.Disk;

/// <summary>
/// The built tool in a home, a folder for temporary files and a current folder of its own: make writes into the output folder,
/// and no other command writes at all.
/// </summary>
public sealed class NothingElsewhereTests : IDisposable
{
    private readonly string root = Directory.CreateTempSubdirectory("splitter-elsewhere-").FullName;

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Fact]
    public async Task OnlyTheOutputFolderIsWritten()
    {
        foreach (var folder in new[] { "home", "tmp", "here", "recipes" })
            Directory.CreateDirectory(At(folder));
        await File.WriteAllTextAsync(
            At("recipes", "panel.yaml"),
            """
            splitter: 1
            artwork: { shapes: [{ wkt: "POLYGON ((0 0, 60 0, 30 40, 0 0))", fill: "#14304f" }] }
            hoops: [{ name: small, field: 130 x 180 mm }]
            output: { folder: ../parts }
            """
        );
        var before = Everything();
        await Run("make", "../recipes/panel.yaml");
        var made = Everything();
        Assert.All(made.Except(before), path => Assert.StartsWith("parts", path, StringComparison.Ordinal));
        Assert.Contains(Path.Combine("parts", "small", "part-A.dst"), made);
        Assert.Empty(before.Except(made));

        await Run("plan", "../recipes/panel.yaml");
        await Run("check", "../recipes/panel.yaml");
        await Run("compare", "../parts", "../parts");
        await Run("inspect", "../parts/small/part-A.dst");
        Assert.Equal(made, Everything());
    }

    private async Task Run(params string[] call)
    {
        var environment = new Dictionary<string, string>
        {
            ["HOME"] = At("home"),
            ["TMPDIR"] = At("tmp"),
            // The runtime itself would lay a pipe for debuggers there.
            ["DOTNET_EnableDiagnostics"] = "0",
        };
        var tool = Path.Combine(AppContext.BaseDirectory, "Splitter.Tool.dll");
        var ran = await Processes.Run(At("here"), environment, "dotnet", ["exec", tool, .. call]);
        Assert.True(ran.ExitCode == 0, ran.ToString());
    }

    private string[] Everything() =>
        [
            .. Directory
                .EnumerateFileSystemEntries(root, "*", SearchOption.AllDirectories)
                .Select(path => Path.GetRelativePath(root, path))
                .Order(StringComparer.Ordinal),
        ];

    private string At(params string[] names) => Path.Combine([root, .. names]);
}
