using System.Collections.Immutable;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Splitter.Diagnostics;

namespace Splitter.Recipes.Language;

/// <summary>A path relative to the recipe that means the same on every system.</summary>
internal static partial class PortablePath
{
    internal const int MostCharacters = 200;

    /// <summary>As a pattern, what every one of them fits.</summary>
    internal const string Written = "(?!/)[^\\\\:*?\"<>|]+";

    /// <summary>What is wrong with it, as a phrase; null for nothing.</summary>
    internal static string? Fault(string path)
    {
        if (path.Length is 0 or > MostCharacters)
            return $"has not 1 to {MostCharacters} characters";
        if (path.Contains('\\'))
            return "has a backslash";
        if (path.Contains(':'))
            return "has a colon, as a drive or a network address has";
        if (path[0] == '/')
            return "begins at the root of a disk";
        if (path.Any(c => char.IsControl(c) || "*?\"<>|".Contains(c)))
            return "has a character that not every system allows in a file's name";

        var steps = path.Split('/');
        var down = steps.SkipWhile(s => s == "..").ToArray();
        return down.Length == 0 ? "names no file or folder, only the way up"
            : down.Contains("..") ? "goes up after it went down"
            : down.Any(s => s.Length == 0 || s == ".") ? "has an empty step or a '.'"
            : down.Any(s => s[^1] is '.' or ' ' || s[0] == ' ')
                ? "has a name that begins or ends with a blank or ends with a point"
            : down.FirstOrDefault(IsReserved) is { } name ? $"has the name '{name}', which Windows keeps for itself"
            : null;
    }

    /// <summary>
    /// Names that Windows keeps for devices, whatever their extension
    /// (learn.microsoft.com, "Naming Files, Paths, and Namespaces").
    /// </summary>
    internal static bool IsReserved(string name) => Reserved().IsMatch(name);

    /// <summary>How many folders it goes up.</summary>
    internal static int StepsUp(string path) => path.Split('/').TakeWhile(s => s == "..").Count();

    [GeneratedRegex(
        @"\A(con|prn|aux|nul|com[0-9]|lpt[0-9])(\.|\z)",
        RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Reserved();
}

/// <summary>The artwork's file.</summary>
internal sealed class ArtworkFileKind : ScalarKind<string>
{
    internal static readonly ImmutableArray<string> Extensions = [".svg", ".geojson", ".json", ".dst"];

    internal override string Expects => $"a file ({Words.List(Extensions, "or")}), relative to the recipe";

    internal override JsonObject ToSchema() =>
        Schema.Text($"{PortablePath.Written}[.]({string.Join('|', Extensions.Select(e => AnyCase(e[1..])))})");

    /// <summary>JSON Schema's patterns have no switch for it.</summary>
    private static string AnyCase(string word) => string.Concat(word.Select(c => $"[{c}{char.ToUpperInvariant(c)}]"));

    internal override Maybe<string> ReadText(string text, Given given)
    {
        bool Ends(string extension) => text.EndsWith(extension, StringComparison.OrdinalIgnoreCase);
        if (PortablePath.Fault(text) is { } fault)
            return given.Refuse(RecipeValueProblems.BadPath(given.Place, given.Key, text, fault));
        return Extensions.Any(Ends)
            ? text
            : given.Refuse(RecipeValueProblems.UnknownExtension(given.Place, given.Key.Name, text, Extensions));
    }
}

/// <summary>A file that a recipe includes.</summary>
internal sealed class IncludedFileKind : ScalarKind<string>
{
    internal override string Expects => "a file (.yaml or .yml), relative to the one that includes it";

    internal override JsonObject ToSchema() => Schema.Text($"{PortablePath.Written}[.]ya?ml");

    internal override Maybe<string> ReadText(string text, Given given) =>
        PortablePath.Fault(text) is { } fault
            ? given.Refuse(RecipeValueProblems.BadPath(given.Place, given.Key, text, fault))
        : text.EndsWith(".yaml", StringComparison.Ordinal) || text.EndsWith(".yml", StringComparison.Ordinal) ? text
        : given.RefuseForm(Expects);
}

/// <summary>Where outputs go.</summary>
internal sealed class FolderKind : ScalarKind<string>
{
    /// <summary>
    /// Beside the recipe's own folder is allowed, so that recipes can stand apart from what they make.
    /// </summary>
    private const int MostStepsUp = 1;

    internal override string Expects => "a folder, relative to the recipe";

    internal override JsonObject ToSchema() => Schema.Text(PortablePath.Written);

    internal override Maybe<string> ReadText(string text, Given given)
    {
        var folder = text.EndsWith('/') ? text[..^1] : text;
        var fault =
            PortablePath.Fault(folder)
            ?? (PortablePath.StepsUp(folder) > MostStepsUp ? "goes up more than one folder" : null);
        return fault is null ? folder : given.Refuse(RecipeValueProblems.BadPath(given.Place, given.Key, text, fault));
    }
}

/// <summary>A hoop's name, which becomes a folder's.</summary>
internal sealed partial class HoopNameKind : ScalarKind<string>
{
    /// <summary>Stands for every hoop on the command line.</summary>
    internal const string All = "all";

    internal override string Expects => "1 to 40 letters, digits, '-' and '_', since it names a folder";

    internal override JsonObject ToSchema() => Schema.AnyText("[A-Za-z0-9_-]{1,40}");

    internal override Maybe<string> ReadText(string text, Given given)
    {
        if (!Pattern().IsMatch(text))
            return given.RefuseForm(Expects);
        if (PortablePath.IsReserved(text))
            return given.Refuse(
                RecipeValueProblems.HoopNameTaken(given.Place, text, "is a name that Windows keeps for itself")
            );
        if (text.Equals(All, StringComparison.OrdinalIgnoreCase))
            return given.Refuse(
                RecipeValueProblems.HoopNameTaken(given.Place, text, "stands for every hoop on the command line")
            );
        return text;
    }

    [GeneratedRegex(@"\A[A-Za-z0-9_-]{1,40}\z", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Pattern();
}
