using System.Text;
using System.Text.RegularExpressions;
using Splitter.Diagnostics;
using Splitter.Recipes;

namespace Splitter.Tests.Recipes;

/// <summary>
/// What a message proposes is pasted into the recipe, over what it speaks of, and nothing is wrong there any more. All cases
/// of wrong recipes are gone through; what has no one place to be pasted, such as a missing key, is left out.
/// </summary>
public sealed partial class ProposalTests
{
    public static TheoryData<string> Wrong => [.. Golden.Cases("Recipes", "Cases")];

    [Theory]
    [MemberData(nameof(Wrong))]
    public void IsAcceptedWhereItIsPasted(string name)
    {
        var text = TextOf(name);
        foreach (var problem in Read(text))
        {
            var pasted = Pasted(text, problem).ToList();
            var accepted = pasted.Count(changed => IsAccepted(text, changed, problem));
            // Of several turns in one list each is there once.
            Assert.InRange(accepted, problem.Code == "SPL1038" ? 1 : pasted.Count, pasted.Count);
        }
    }

    /// <summary>So many that most of the catalogue is among them.</summary>
    [Fact]
    public void ManyAreTried()
    {
        var tried = Golden
            .Cases("Recipes", "Cases")
            .Select(TextOf)
            .SelectMany(text => Read(text).Where(problem => Pasted(text, problem).Any()))
            .ToList();
        Assert.InRange(tried.Count, 90, int.MaxValue);
        Assert.Superset(
            new HashSet<string>(
                ["20", "30", "31", "32", "33", "34", "35", "36", "37", "38", "39", "42"],
                StringComparer.Ordinal
            ),
            tried.Select(problem => problem.Code[^2..]).ToHashSet(StringComparer.Ordinal)
        );
    }

    /// <summary>The line is wrong in nothing that it was not wrong in before, and no more in this.</summary>
    private static bool IsAccepted(string text, string pasted, Diagnostic problem)
    {
        var (before, after) = (OnLine(text, problem.Place.Line), OnLine(pasted, problem.Place.Line));
        // A key that is known now has a value that is looked at.
        return problem.Code == "SPL1020"
            ? !after.Contains(problem.Message) && !after.Any(message => message.Contains("a second time"))
            : after.IsProperSubsetOf(before) && !after.Contains(problem.Message);
    }

    private static HashSet<string> OnLine(string text, int line) =>
        [.. Read(text).Where(problem => problem.Place.Line == line).Select(problem => problem.Message)];

    /// <summary>The recipe with each proposal of a message in it.</summary>
    private static IEnumerable<string> Pasted(string text, Diagnostic problem)
    {
        if (string.CompareOrdinal(problem.Code, "SPL1020") < 0 || problem.Code is "SPL1021" or "SPL1060" or "SPL1070")
            yield break;
        var at = Index(text, problem.Place);
        if (AsIn().Match(problem.Message) is { Success: true } pair)
        {
            var key = $"{pair.Groups["key"].Value}:";
            var from = text.LastIndexOf(key, Math.Min(text.Length - 1, at + key.Length), StringComparison.Ordinal);
            var whole = problem.Code == "SPL1031" ? (0, from + key.Length) : Value(text, from + key.Length);
            if (from >= 0 && whole is (_, var behind))
                yield return $"{text[..from]}{key} {pair.Groups["example"].Value}{text[behind..]}";
            yield break;
        }
        var (start, end) = problem.Code == "SPL1020" ? (at, KeyEnd(text, at)) : Value(text, at) ?? (at, at);
        // A message about a piece of a value, such as a side of a size, is about that piece.
        var piece = Piece().Match(problem.Message).Groups["piece"].Value;
        var inside = text[start..end].IndexOf(piece, StringComparison.Ordinal);
        if (start == end || inside < 0)
            yield break;
        if (piece.Length > 0)
            (start, end) = (start + inside, start + inside + piece.Length);
        foreach (var proposal in Proposals(problem.Message))
            yield return text[..start] + proposal + text[end..];
    }

    private static IEnumerable<string> Proposals(string message)
    {
        if (Meant().Match(message) is { Success: true } meant)
            return [meant.Groups["word"].Value];
        if (Ranged().Match(message) is { Success: true } range)
            return [range.Groups["least"].Value, range.Groups["most"].Value];
        return Listed().Match(message) is { Success: true } list ? Comma().Split(list.Groups["list"].Value) : [];
    }

    /// <summary>From the first character of a value on one line to behind its last; null where it spans several.</summary>
    private static (int Start, int End)? Value(string text, int at)
    {
        while (at < text.Length && text[at] == ' ')
            at++;
        if (at >= text.Length || text[at] == '\n')
            return null;
        if (text[at] is '"' or '\'')
            return text.IndexOf(text[at], at + 1) is >= 0 and var close ? (at, close + 1) : null;
        var isInFlow = text[..at].Count(c => c is '[' or '{') > text[..at].Count(c => c is ']' or '}');
        var depth = 0;
        for (var i = at; i <= text.Length; i++)
        {
            if (i == text.Length || text[i] == '\n')
                return depth == 0 ? (at, i) : null;
            if (depth == 0 && (isInFlow && text[i] is ',' or ']' or '}'))
                return (at, i);
            depth +=
                text[i] is '[' or '{' ? 1
                : text[i] is ']' or '}' ? -1
                : 0;
            if (depth == 0 && text[i] is ']' or '}')
                return (at, i + 1);
        }
        return null;
    }

    private static int KeyEnd(string text, int at) => text.IndexOf(':', at) is >= 0 and var colon ? colon : text.Length;

    private static int Index(string text, Place place)
    {
        var lines = text.Split('\n');
        return lines.Take(place.Line - 1).Sum(line => line.Length + 1) + Math.Max(0, place.Column - 1);
    }

    private static IEnumerable<Diagnostic> Read(string text) =>
        RecipeReader.Read("recipe.yaml", Encoding.UTF8.GetBytes(text), _ => Included).Diagnostics;

    /// <summary>Whatever is included is there, and has nothing to say.</summary>
    private static readonly SourceRead Included = new("threads: []"u8.ToArray(), null);

    private static string TextOf(string name) =>
        File.ReadAllText(Golden.Source("Recipes", "Cases", name, "recipe.yaml"));

    [GeneratedRegex("as in '(?<key>[a-z-]+): (?<example>.+)'$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex AsIn();

    [GeneratedRegex(
        "' is (?<piece>[^';]+); write a value|and (?<piece>[^;]+) has no unit|' in (?<piece>[^;]+) is no unit|' has (?<piece>[^;]+), which is no whole step",
        RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex Piece();

    [GeneratedRegex("did you mean '(?<word>[^']+)'", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Meant();

    [GeneratedRegex("write a value from (?<least>.+) to (?<most>.+)$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Ranged();

    [GeneratedRegex("; write (at most )?(?<list>[^']+)$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Listed();

    [GeneratedRegex(", | or ", RegexOptions.None, 1000)]
    private static partial Regex Comma();
}
