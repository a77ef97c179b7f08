using System.Reflection;
using System.Text;

namespace Splitter.Tests;

/// <summary>
/// Expectations kept in files beside their input. <c>SPLITTER_ACCEPT=1</c> rewrites them instead of comparing; the
/// difference is then reviewed like any other change.
/// </summary>
internal static class Golden
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    internal static bool Accepting { get; } = Environment.GetEnvironmentVariable("SPLITTER_ACCEPT") == "1";

    /// <summary>This project's source folder.</summary>
    internal static string Project { get; } =
        typeof(Golden)
            .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
            .Single(a => a.Key == "ProjectDirectory")
            .Value!;

    /// <summary>A file or folder of this project's sources, by its parts.</summary>
    internal static string Source(params string[] parts) => Path.Combine([Project, .. parts]);

    /// <summary>The names of the cases in a folder, sorted.</summary>
    internal static IEnumerable<string> Cases(params string[] folder) =>
        Directory
            .EnumerateDirectories(Source(folder))
            .Select(path => Path.GetFileName(path)!)
            .Order(StringComparer.Ordinal);

    /// <summary>Text as the file holds it, LF at line ends however git checked it out.</summary>
    internal static void Check(string file, string actual)
    {
        if (Accepting)
            File.WriteAllText(file, actual, Utf8);
        Assert.True(File.Exists(file), $"{file} is missing; run once with SPLITTER_ACCEPT=1 and review it.");
        Assert.Equal(File.ReadAllText(file).ReplaceLineEndings("\n"), actual);
    }

    /// <summary>Bytes as the file holds them.</summary>
    internal static void Check(string file, ReadOnlySpan<byte> actual)
    {
        if (Accepting)
            File.WriteAllBytes(file, actual);
        Assert.True(File.Exists(file), $"{file} is missing; run once with SPLITTER_ACCEPT=1 and review it.");
        Assert.True(actual.SequenceEqual(File.ReadAllBytes(file)), $"{file} differs from what was made.");
    }
}
