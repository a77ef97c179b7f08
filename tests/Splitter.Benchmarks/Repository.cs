using System.Reflection;

namespace Splitter.Benchmarks;

/// <summary>The source tree that this program was built from.</summary>
internal static class Repository
{
    internal static string Folder { get; } =
        Path.GetFullPath(
            typeof(Repository)
                .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
                .Single(a => a.Key == "RepositoryDirectory")
                .Value!
        );

    internal static string Find(params ReadOnlySpan<string> parts) => Path.Combine([Folder, .. parts]);
}
