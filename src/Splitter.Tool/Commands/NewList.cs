using Splitter.Diagnostics;
using Splitter.Tool.Disk;

namespace Splitter.Tool.Commands;

/// <summary>
/// A list of files that is there whole or as it was, since another build may read or write it at the same time, and
/// that is as old as the beginning of the run.
/// </summary>
internal sealed class NewList
{
    private readonly string? path;
    private readonly DateTime? begun;

    /// <param name="path">Null where nobody asks for it.</param>
    internal NewList(string? path)
    {
        this.path = path;
        begun = path is null ? null : TimeOfDisk(path);
    }

    /// <summary>At most one problem.</summary>
    internal IEnumerable<Diagnostic> Write(IEnumerable<string> files)
    {
        if (path is null)
            yield break;
        var problem = "";
        try
        {
            var whole = UnfinishedFile.Of(path);
            File.WriteAllLines(whole, files.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));
            if (begun is { } time)
                File.SetLastWriteTimeUtc(whole, time);
            File.Move(whole, path, overwrite: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            problem = e.Message;
        }
        if (problem.Length > 0)
            yield return CallProblems.CannotWriteList(path, problem);
    }

    /// <summary>
    /// What the disk takes for now: a build compares this time with those of files, which a disk on a network stamps by
    /// another clock than this machine's. Null where no file can be written, of which <see cref="Write"/> tells.
    /// </summary>
    private static DateTime? TimeOfDisk(string path)
    {
        try
        {
            UnfinishedFile.DeleteLeft(path);
            var empty = UnfinishedFile.Of(path);
            File.WriteAllBytes(empty, []);
            var time = File.GetLastWriteTimeUtc(empty);
            File.Delete(empty);
            return time;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            return null;
        }
    }
}
