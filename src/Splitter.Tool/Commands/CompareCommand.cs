using System.Collections.Immutable;
using System.CommandLine;
using Splitter.Checking;
using Splitter.Diagnostics;
using Splitter.Outputs;
using Splitter.Tool.Commands.Comparing;

namespace Splitter.Tool.Commands;

/// <summary><c>splitter compare</c>: one set of finished files against another.</summary>
internal static class CompareCommand
{
    internal static Command Create(TextWriter output, TextWriter error)
    {
        var old = Folder("OLD", "A set, or the folder of a recipe's sets, as it was.");
        var now = Folder("NEW", "The same as it is now.");
        var (pictures, stitchesOnly, allLines) = (
            Comparison.Pictures(),
            Comparison.StitchesOnly(),
            Comparison.AllLines()
        );
        var format = SharedOptions.Format(withSarif: true);
        var command = new ExampleCommand(
            "compare",
            "Compare finished files: which parts, steps and corners changed, by how much, and what it costs.",
            "splitter compare examples/parts/lighthouse-bay /tmp/bay",
            "splitter compare examples/parts/lighthouse-bay/small /tmp/bay/small --pictures /tmp/changes",
            "splitter compare examples/parts/lighthouse-bay /tmp/bay --format sarif"
        )
        {
            old,
            now,
            pictures,
            stitchesOnly,
            allLines,
            format,
        };
        command.SetAction(call =>
            Run(
                    call.GetRequiredValue(old),
                    call.GetRequiredValue(now),
                    call.GetValue(pictures),
                    call.GetValue(stitchesOnly),
                    call.GetValue(allLines)
                )
                .Write(call.GetValue(format), output, error)
        );
        return command;
    }

    private static Argument<string> Folder(string name, string description) =>
        SharedOptions.Files(new Argument<string>(name) { Description = description });

    private static Answer Run(string old, string now, string? pictures, bool stitchesOnly, bool allLines)
    {
        if (IsSet(old) != IsSet(now))
            return Answer.Wrong([CallProblems.NoSet(old, now)]);
        try
        {
            var pairs = Pairs(old, now);
            if (pairs.IsEmpty)
                return Answer.Wrong([CallProblems.NoSet(old, now)]);
            foreach (var (_, before, after) in pairs)
                if (IsDamaged(before) || IsDamaged(after))
                    return Answer.Wrong([CallProblems.NoSet(before, after)]);
            return Comparison.Answer([.. pairs.Select(Compare)], [], pictures, stitchesOnly, allLines, isCheck: false);
        }
        catch (UnreadableException e)
        {
            return Answer.Wrong([CallProblems.CannotRead(e.Path, $"cannot be read ({e.Message.TrimEnd('.')})")]);
        }
    }

    private static Compared Compare((string Hoop, string Old, string Now) pair)
    {
        var (before, after) = (Side(pair.Hoop, pair.Old), Side(pair.Hoop, pair.Now));
        var found = Checker.Compare(before, after);
        var place = Place.Whole(Path.Combine(pair.Now, ManifestWriter.FileName).Replace('\\', '/'));
        return new(
            before,
            after,
            ComparedSet.Of(pair.Now, after.Paths.Length, found, isCheck: false),
            [.. Finding.Of(found, isCheck: false, place, drawing: null)]
        );
    }

    /// <summary>Both may be a set, or folders with a set for each hoop, of which one side may lack some.</summary>
    private static ImmutableArray<(string Hoop, string Old, string Now)> Pairs(string old, string now) =>
        IsSet(old) && IsSet(now)
            ? [(Path.GetFileName(Path.GetFullPath(now).TrimEnd(Path.DirectorySeparatorChar)), old, now)]
            :
            [
                .. Hoops(old)
                    .Union(Hoops(now), StringComparer.Ordinal)
                    .Order(StringComparer.Ordinal)
                    .Select(hoop => (hoop, Path.Combine(old, hoop), Path.Combine(now, hoop))),
            ];

    private static IEnumerable<string> Hoops(string folder) =>
        Directory.Exists(folder)
            ? Read(folder, Directory.GetDirectories)
                .Where(inner => !Path.GetFileName(inner).StartsWith('.') && (IsSet(inner) || IsDamaged(inner)))
                .Select(inner => Path.GetFileName(inner)!)
            : [];

    private static bool IsSet(string folder) =>
        Has(folder, ManifestWriter.FileName) && Has(folder, SumsWriter.FileName);

    /// <summary>The sums list a set's files: without them two sets would seem the same, having none.</summary>
    private static bool IsDamaged(string folder) =>
        Has(folder, ManifestWriter.FileName) != Has(folder, SumsWriter.FileName);

    private static bool Has(string folder, string file) => File.Exists(Path.Combine(folder, file));

    private static SetSide Side(string hoop, string folder) =>
        SetSide.OnDisk(hoop, path => Read(Path.Combine(folder, path[(hoop.Length + 1)..]), Comparison.ReadFile));

    private static T Read<T>(string path, Func<string, T> read)
    {
        try
        {
            return read(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new UnreadableException(path, e);
        }
    }

    /// <summary>Carries the path, which tells the person on which of the two sides the disk failed.</summary>
    private sealed class UnreadableException(string path, Exception why) : IOException(why.Message, why)
    {
        internal string Path => path;
    }
}
