using System.Reflection;

namespace Splitter.Tool;

/// <summary>The version that the package has.</summary>
internal static class ToolVersion
{
    internal static string Text { get; } =
        typeof(ToolVersion).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion;
}
