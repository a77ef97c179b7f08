using System.Reflection;
using System.Runtime.InteropServices;
using Splitter.Tests;

namespace Splitter.PackageTests;

/// <summary>
/// All packages, packed once into a folder that is the only source, and folders outside the repository to use them in.
/// NuGet's and the tool's caches are fresh ones; packages of others come from the machine's own.
/// </summary>
public sealed class PackedFeed : IAsyncLifetime
{
    private readonly string root = Directory.CreateTempSubdirectory("splitter-package-").FullName;
    private readonly Dictionary<string, string> environment;

    public PackedFeed() =>
        environment = new()
        {
            ["NUGET_PACKAGES"] = Path.Combine(root, "cache"),
            ["NUGET_FALLBACK_PACKAGES"] = Others,
            ["DOTNET_CLI_HOME"] = Path.Combine(root, "home"),
            ["DOTNET_NOLOGO"] = "1",
            ["DOTNET_CLI_TELEMETRY_OPTOUT"] = "1",
            ["DOTNET_GENERATE_ASPNET_CERTIFICATE"] = "false",
            // A worker that stays behind would keep folders of a test that is over.
            ["MSBUILDDISABLENODEREUSE"] = "1",
            ["DOTNET_CLI_USE_MSBUILD_SERVER"] = "0",
        };

    internal static string Version { get; } = Metadata("Version");

    internal string Packages => Path.Combine(root, "packages");

    /// <summary>The machine's packages but for ours, of which it may have another build with the same version.</summary>
    private string Others => Path.Combine(root, "others");

    /// <summary>The portable tool and that of this machine; the other systems' differ in nothing that is tested here.</summary>
    public async Task InitializeAsync()
    {
        Directory.CreateDirectory(Others);
        foreach (var package in Directory.EnumerateDirectories(OnThisMachine()).Select(Path.GetFileName))
            if (!package!.StartsWith("splitter", StringComparison.Ordinal))
                Directory.CreateSymbolicLink(Path.Combine(Others, package), Path.Combine(OnThisMachine(), package));
        await File.WriteAllTextAsync(Path.Combine(root, "nuget.config"), Sources(Packages));
        await PackAll(Packages);
    }

    public Task DisposeAsync()
    {
        Directory.Delete(root, recursive: true);
        return Task.CompletedTask;
    }

    /// <summary>With the machine's own caches, as whoever publishes the packages does.</summary>
    internal static async Task PackAll(string folder)
    {
        await Pack(folder, "Splitter", "--no-build");
        await Pack(folder, "Splitter.MSBuild", "--no-build");
        await Pack(
            folder,
            "Splitter.Tool",
            "-p:ForEverySystem=true",
            $"-p:OnlySystem={RuntimeInformation.RuntimeIdentifier}"
        );
    }

    private static async Task Pack(string folder, string project, params string[] options)
    {
        var ran = await Processes.Run(
            Metadata("Sources"),
            null,
            "dotnet",
            ["pack", project, "-c", Metadata("Configuration"), "-o", folder, "-v", "q", .. options]
        );
        Assert.True(ran.ExitCode == 0, $"{project}: {ran}");
    }

    /// <summary>A folder of its own for one test, with a space and letters beyond ASCII on the way.</summary>
    internal string Folder() =>
        Directory.CreateDirectory(Path.Combine(root, $"Nähen & Stiche {Guid.NewGuid():N}")).FullName;

    /// <summary>A copy of a folder of the repository.</summary>
    internal string CopyOf(string path)
    {
        var (from, to) = (Path.Combine(Metadata("Sources"), "..", path), Folder());
        foreach (var file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }
        return to;
    }

    internal Task<Ran> Dotnet(string folder, params string[] arguments) => Run(folder, "dotnet", arguments);

    internal Task<Ran> Run(string folder, string program, params string[] arguments) =>
        Processes.Run(folder, environment, program, arguments);

    internal static string Metadata(string key) =>
        typeof(PackedFeed).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().Single(a => a.Key == key).Value!;

    internal static string OnThisMachine() =>
        Environment.GetEnvironmentVariable("NUGET_PACKAGES")
        ?? Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".nuget", "packages");

    private static string Sources(string packages) =>
        $"""
            <configuration>
              <packageSources>
                <clear />
                <add key="packed" value="{packages}" />
              </packageSources>
            </configuration>
            """;
}

/// <summary>Packing takes longest: all classes of this project share one.</summary>
[CollectionDefinition(nameof(PackedFeed))]
public sealed class PackedFeedDefinition : ICollectionFixture<PackedFeed>;
