namespace Splitter.Outputs;

/// <summary>What the files of a part are called.</summary>
internal static class PartFiles
{
    private const string Prefix = "part-";
    private const string TapeEnding = ".dst";

    /// <summary>All of them, but for what follows the point.</summary>
    internal static string Stem(string letter) => $"{Prefix}{letter}";

    /// <summary>The machine file.</summary>
    internal static string Tape(string letter) => $"{Stem(letter)}{TapeEnding}";

    /// <summary>The folder of a part that was moved onto sewn work, beside that of its hoop.</summary>
    internal static string CorrectedFolder(string hoop, string letter) => $"{hoop}-{Stem(letter)}-corrected";

    /// <summary>A machine sews it.</summary>
    internal static bool IsTape(string path) => path.EndsWith(TapeEnding, StringComparison.Ordinal);

    /// <summary>Null for a file that is no part's tape: sums may list tapes of another name.</summary>
    internal static string? LetterOfTape(string path)
    {
        var name = path[(path.LastIndexOf('/') + 1)..];
        return name.StartsWith(Prefix, StringComparison.Ordinal) && IsTape(name)
            ? name[Prefix.Length..^TapeEnding.Length]
            : null;
    }
}
