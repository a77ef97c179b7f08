using System.Diagnostics;
using System.Globalization;

namespace Splitter.Tool.Disk;

/// <summary>
/// A file that is written under another name beside its own, and takes that when it is whole, since others may read it
/// meanwhile. The name tells a later run what one that was killed has left.
/// </summary>
internal static class UnfinishedFile
{
    /// <summary>This run's own: another may write the same file at the same time.</summary>
    internal static string Of(string file) => Of(file, Environment.ProcessId);

    internal static string Of(string file, int process) =>
        Path.Combine(Path.GetDirectoryName(file) ?? "", FormattableString.Invariant($"{Stem(file)}{process}"));

    /// <summary>What runs have left that are at work no more.</summary>
    internal static void DeleteLeft(string file)
    {
        var stem = Stem(file);
        foreach (var other in Directory.EnumerateFiles(Path.GetDirectoryName(Path.GetFullPath(file))!))
            if (
                Path.GetFileName(other) is var name
                && name.StartsWith(stem, StringComparison.Ordinal)
                && int.TryParse(name.AsSpan(stem.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var id)
                && !IsAtWork(id)
            )
                File.Delete(other);
    }

    /// <summary>As those of a set's folder are called.</summary>
    private static string Stem(string file) => $".{Path.GetFileName(file)}.splitter-unfinished-";

    private static bool IsAtWork(int process)
    {
        try
        {
            using var found = Process.GetProcessById(process);
            return true;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }
}
