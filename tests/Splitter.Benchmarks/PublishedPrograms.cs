using System.Diagnostics;
using System.Runtime.InteropServices;

namespace Splitter.Benchmarks;

/// <summary>The tool, compiled ahead of time as its packages are, and a program that does nothing.</summary>
internal sealed class PublishedPrograms
{
    private const string EmptyProject = """
        <Project Sdk="Microsoft.NET.Sdk">
          <PropertyGroup>
            <OutputType>Exe</OutputType>
            <TargetFramework>net10.0</TargetFramework>
            <InvariantGlobalization>true</InvariantGlobalization>
          </PropertyGroup>
        </Project>
        """;

    /// <param name="folder">That they are put into.</param>
    internal PublishedPrograms(string folder)
    {
        var source = Directory.CreateDirectory(Path.Combine(folder, "source")).FullName;
        File.WriteAllText(Path.Combine(source, "Empty.csproj"), EmptyProject);
        File.WriteAllText(Path.Combine(source, "Program.cs"), "return 0;\n");
        Publish(source, Path.Combine(folder, "empty"));
        Publish(
            Repository.Find("src", "Splitter.Tool"),
            Path.Combine(folder, "tool"),
            "-p:ForEverySystem=true",
            $"-p:OnlySystem={RuntimeInformation.RuntimeIdentifier}",
            "-r",
            RuntimeInformation.RuntimeIdentifier
        );
        Empty = Path.Combine(folder, "empty", "Empty");
        Tool = Path.Combine(folder, "tool", "Splitter.Tool");
    }

    internal string Empty { get; }
    internal string Tool { get; }

    private static void Publish(string project, string folder, params string[] options)
    {
        using var process = Process.Start(
            "dotnet",
            ["publish", project, "-c", "Release", "-v", "q", "-o", folder, .. options]
        );
        process.WaitForExit();
        if (process.ExitCode != 0)
            throw new InvalidOperationException($"{project} was not published.");
    }
}
