using System.Reflection;
using Splitter.Tests;

namespace Splitter.PackageTests;

/// <summary>The tool, packed and installed as a user would: once for all tests of a class.</summary>
public sealed class InstalledTool : IAsyncLifetime
{
    /// <summary>A package of the same name in a registry must not be taken for ours: the folder is the first source.</summary>
    private const string Sources = """
        <configuration>
          <packageSources>
            <add key="packed" value="packages" />
          </packageSources>
        </configuration>
        """;

    private readonly string root = Directory.CreateTempSubdirectory("splitter-package-").FullName;

    internal static string Version { get; } = Metadata("Version");

    /// <summary>Packs what the solution has built, then installs it from a folder.</summary>
    public async Task InitializeAsync()
    {
        var packages = Directory.CreateDirectory(Path.Combine(root, "packages")).FullName;
        await File.WriteAllTextAsync(Path.Combine(root, "nuget.config"), Sources);
        await Dotnet("pack", Metadata("ToolProject"), "-c", Metadata("Configuration"), "--no-build", "-o", packages);
        await Dotnet("tool", "install", "Splitter.Tool", "--version", Version, "--tool-path", "tools");
    }

    public Task DisposeAsync()
    {
        Directory.Delete(root, recursive: true);
        return Task.CompletedTask;
    }

    /// <summary>A folder of its own for one test.</summary>
    internal string Folder() => Directory.CreateDirectory(Path.Combine(root, $"{Guid.NewGuid():N}")).FullName;

    internal Task<Ran> Run(string folder, params string[] arguments) =>
        Processes.Run(folder, null, Path.Combine(root, "tools", "splitter"), arguments);

    private async Task Dotnet(params string[] arguments)
    {
        var ran = await Processes.Run(root, null, "dotnet", arguments);
        Assert.True(ran.ExitCode == 0, $"dotnet {string.Join(' ', arguments)}: {ran}");
    }

    private static string Metadata(string key) =>
        typeof(InstalledTool)
            .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
            .Single(a => a.Key == key)
            .Value!;
}
