using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Recipes;
using Splitter.Recipes.Yaml;

namespace Splitter.Starting;

/// <summary>A rule of sewing for a recipe that is started, as lines of YAML behind its <c>- match:</c>.</summary>
/// <param name="Comment">Why, a line or more.</param>
/// <param name="Match">As a recipe writes it.</param>
internal sealed record ProposedRule(ImmutableArray<string> Comment, string Match, ImmutableArray<string> Keys);

/// <summary>What carries a name, and what a rule for it matches.</summary>
internal sealed record Named(string Name, string Match, ImmutableArray<Seen> Elements);

/// <summary>
/// Rules that suit what a drawing holds; the first that matches a shape wins, so special ones come first.
/// </summary>
internal static partial class SewProposals
{
    /// <summary>
    /// A thing this small looks wrong with a join through it, µm. It still fits every usual hoop when the work is made
    /// three times as wide, and with it the rule. By eye, no source.
    /// </summary>
    private const int SmallThing = 40 * Units.Millimetre;

    /// <summary>More rules of one kind are a list that nobody reads.</summary>
    private const int MostOfAKind = 8;

    /// <summary>Row directions that differ enough to be seen side by side, degrees. By eye, no source.</summary>
    private static readonly ImmutableArray<int> Angles = [30, -30, 75, 0, -60, 50];

    internal static ImmutableArray<ProposedRule> For(Survey survey, ImmutableArray<string> threads) =>
        survey.IsStitched
            ? []
            : [.. Lettering(survey), .. SmallThings(survey), .. FineLines(survey), .. Rows(survey, threads)];

    private static IEnumerable<ProposedRule> Lettering(Survey survey) =>
        Small(survey, isLettering: true)
            .Select(
                (named, i) =>
                    new ProposedRule(
                        i == 0
                            ? ["Letters show every fault, so none is ever cut: each lies in one hooping, whole."]
                            : [],
                        named.Match,
                        named.Elements.All(e => e.Sewn == SewAs.Satin)
                            ? ["as: satin", "keep-whole: true"]
                            : ["keep-whole: true"]
                    )
            );

    private static IEnumerable<ProposedRule> SmallThings(Survey survey) =>
        Small(survey, isLettering: false)
            .Select(
                (named, i) =>
                    new ProposedRule(
                        [
                            .. i == 0
                                ? ["A join through a small thing would show, so that each lies in one hooping, whole."]
                                : Array.Empty<string>(),
                            FormattableString.Invariant($"{Count(named.Elements.Length, "thing")}, the largest ")
                                + FormattableString.Invariant(
                                    $"{Units.ToMillimetres(named.Elements.Max(e => e.Longest)):0} mm"
                                ),
                        ],
                        named.Match,
                        ["keep-whole: true"]
                    )
            );

    /// <summary>Names of nothing but small things, each of which brings something that none before it has.</summary>
    private static IEnumerable<Named> Small(Survey survey, bool isLettering)
    {
        var kept = new HashSet<Seen>(ReferenceEqualityComparer.Instance);
        return Names(survey)
            .Where(named =>
                IsLettering().IsMatch(named.Name) == isLettering
                && named.Elements.All(e => e.Longest <= SmallThing)
                && named.Elements.Where(kept.Add).ToList() is not []
            )
            .Take(MostOfAKind);
    }

    private static IEnumerable<ProposedRule> FineLines(Survey survey)
    {
        var lines = survey.Elements.Count(e => e is { Sewn: SewAs.Run, Element: DrawnLine { Width: < 1000 } });
        if (lines > 0)
            yield return new(
                [
                    $"{Count(lines, "line")} finer than a millimetre: one line of stitches each. 'passes: "
                        + "triple' makes them bold.",
                ],
                "{ stroke-width: \"< 1 mm\" }",
                ["as: run", "stitch-length: 2.2 mm"]
            );
    }

    /// <summary>Neighbours whose rows lean different ways are told apart; it needs two colours to be of use.</summary>
    private static IEnumerable<ProposedRule> Rows(Survey survey, ImmutableArray<string> threads)
    {
        var number = survey.Colours.Index().ToDictionary(c => c.Item, c => c.Index, StringComparer.Ordinal);
        var filled = survey
            .Elements.Where(e => e is { Sewn: SewAs.Fill, Element: DrawnArea })
            .GroupBy(e => e.Element.Color, StringComparer.Ordinal)
            .OrderByDescending(g => g.Sum(e => ((DrawnArea)e.Element).Ground.Area))
            .ThenBy(g => number[g.Key])
            .Take(Angles.Length)
            .ToList();
        if (filled.Count < 2)
            yield break;
        foreach (var (i, colour) in filled.Index())
            yield return new(
                i == 0
                    ?
                    [
                        "Rows of neighbouring colours lean different ways, so that light tells them apart. The "
                            + "largest come first.",
                        threads[number[colour.Key]],
                    ]
                    : [threads[number[colour.Key]]],
                $"{{ fill: \"{colour.Key}\" }}",
                [FormattableString.Invariant($"angle: {Angles[i]} deg")]
            );
    }

    /// <summary>
    /// Classes and groups, each with what carries its name. A group has several elements; an element's own id is none.
    /// </summary>
    private static IEnumerable<Named> Names(Survey survey)
    {
        var classes = survey.Elements.SelectMany(e => e.Element.Classes).Distinct(StringComparer.Ordinal);
        foreach (var name in classes.Where(YamlText.IsPlain))
            yield return new(
                name,
                $"{{ class: {YamlText.Quoted(name)} }}",
                [.. survey.Elements.Where(e => e.Element.Classes.Contains(name, StringComparer.Ordinal))]
            );
        var groups = survey
            .Elements.SelectMany(e => e.Element.Ids.Where(id => id != e.Element.Id))
            .Distinct(StringComparer.Ordinal);
        foreach (var name in groups.Where(YamlText.IsPlain))
            if (
                survey.Elements.Where(e => e.Element.Ids.Contains(name, StringComparer.Ordinal)).ToImmutableArray() is
                { Length: > 1 } elements
            )
                yield return new(name, $"{{ id: {YamlText.Quoted(name)} }}", elements);
    }

    internal static string Count(int count, string what, string? many = null) =>
        FormattableString.Invariant($"{count} {(count == 1 ? what : many ?? $"{what}s")}");

    [GeneratedRegex(
        "letter|text|caption|word|script|alphabet",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant,
        1000
    )]
    private static partial Regex IsLettering();
}
