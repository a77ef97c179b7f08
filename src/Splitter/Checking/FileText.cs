using System.Collections.Immutable;

namespace Splitter.Checking;

/// <summary>Files that differ as lines for a person.</summary>
internal static class FileText
{
    /// <summary>Files of one name with the same fate stand in one line.</summary>
    /// <param name="isCheck">A set on disk against what the recipe makes now; else one set against another.</param>
    internal static IEnumerable<string> Of(ImmutableArray<FileDifference> files, bool isCheck) =>
        files
            .GroupBy(f => (Path.ChangeExtension(f.Path, null), f.State, f.IsLabelAlone))
            .Select(alike => Together([.. alike], isCheck));

    private static string Together(ImmutableArray<FileDifference> alike, bool isCheck)
    {
        if (alike is [var only])
            return Of(only, isCheck);
        var (first, others) = (alike[0], alike.Skip(1).Select(f => Path.GetExtension(f.Path)).ToList());
        var names = string.Join(", ", [first.Path, .. others.SkipLast(1)]);
        var fate = first.State switch
        {
            FileState.Missing => isCheck ? "are missing" : "are new",
            FileState.Extra => isCheck ? "are not made any more" : "are gone",
            _ => "differ",
        };
        return $"{names} and {others[^1]} {fate}";
    }

    /// <summary>One of them.</summary>
    internal static string Of(FileDifference file, bool isCheck) =>
        file.State switch
        {
            FileState.Missing => $"{file.Path} is {(isCheck ? "missing" : "new")}",
            FileState.Extra => isCheck ? $"{file.Path} is not made any more" : $"{file.Path} is gone",
            _ => $"{file.Path} differs{(file.IsLabelAlone ? " in its label alone" : "")}",
        };
}
