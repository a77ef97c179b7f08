using System.Text;
using Splitter.Checking;
using Splitter.Tool.Disk;
using static System.FormattableString;

namespace Splitter.Tool.Commands;

/// <summary>What a check found in one folder.</summary>
/// <param name="Files">How many the recipe makes.</param>
/// <param name="Differences">What differs, a line each; none when all is the same.</param>
internal sealed record CheckedSet(
    string Folder,
    string Hoop,
    int Files,
    bool Same,
    IReadOnlyList<FileDifference> Different,
    IReadOnlyList<string> Differences
)
{
    /// <summary>Longer lists are for a program: a person sees from the first lines what is the matter.</summary>
    private const int MostLines = 60;

    internal static CheckedSet Of(SetFolder folder, PartSet set, SetDifferences found) =>
        new(
            folder.Path.Replace('\\', '/'),
            folder.Hoop,
            set.Files.Length,
            found.AreNone,
            found.Files,
            [.. DifferenceText.Of(found)]
        );

    internal string ToText()
    {
        if (Same)
            return Invariant($"{Folder}: all {Files} files are the same\n");
        var text = new StringBuilder(
            Invariant($"{Folder}: {Different.Count} of {Files} files are not what the recipe makes now\n")
        );
        foreach (var line in Differences.Take(MostLines))
            text.Append($"  {line}\n");
        if (Differences.Count > MostLines)
            text.Append(Invariant($"  and {Differences.Count - MostLines} lines more; '--format json' has them all\n"));
        return text.ToString();
    }
}
