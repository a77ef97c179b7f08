using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Splitter.Diagnostics;
using Splitter.Planning;
using Splitter.Planning.Drafting;
using Splitter.Planning.Remedies;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Remedies;

/// <summary>
/// Every piece of advice is written into the recipe, and what was promised comes true: the joins that it was given for are
/// covered, and one join fits just as it was told. Each is given once, whatever the number of joins.
/// </summary>
public sealed partial class AdviceTests
{
    /// <summary>A frame, sewn all round by fields that share 11 mm: where the round closes, errors of both ways add up.</summary>
    private const string Square =
        "POLYGON ((5 5, 315 5, 315 315, 5 315, 5 5), (100 100, 100 220, 220 220, 220 100, 100 100))";

    private const string Wide =
        "POLYGON ((5 5, 415 5, 415 315, 5 315, 5 5), (40 100, 40 220, 380 220, 380 100, 40 100))";

    /// <summary>The same for a grid of three by three, whose fields share 11 mm.</summary>
    private const string Frame =
        "POLYGON ((5 5, 325 5, 325 325, 5 325, 5 5), (105 105, 105 225, 225 225, 225 105, 105 105))";

    private const string Tall = "POLYGON ((0 0, 120 0, 120 160, 0 160, 0 0))";

    private const string Banner = "POLYGON ((0 0, 50 0, 50 150, 0 150, 0 0))";

    private const string Flag = "POLYGON ((0 0, 120 0, 120 150, 0 150, 0 0))";

    private const string Corner = "POLYGON ((0 0, 60 0, 60 60, 120 60, 120 120, 0 120, 0 0))";

    [Theory]
    [InlineData("1.75", 3, Square, "registration.corners.count")]
    [InlineData("1", 4, Wide, "fields.first")]
    [InlineData("1.2", 4, Wide, "fields.first")]
    public void WhereFieldsAreListed(string accuracy, int columns, string frame, string key)
    {
        var recipe = Recipe(frame, Listed(columns), "120 x 120 mm", "auto", "straight", accuracy);
        Assert.Contains(key, Followed(recipe));
    }

    /// <summary>All of it is planned again: fields, their order and seams know of corners and overlaps, too.</summary>
    [Theory]
    [InlineData("0.3 mm", "0.3", Banner, new[] { "overlap.width" })]
    [InlineData("auto", "1.6", Flag, new[] { "registration.corners.count" })]
    [InlineData("auto", "1.8", Flag, new[] { "fields.first", "registration.corners.count" })]
    [InlineData("auto", "2", Flag, new[] { "hoop" })]
    public void WhereFieldsAndSeamsAreChosen(string width, string accuracy, string shape, string[] keys) =>
        Assert.Equal(keys, Followed(Recipe(shape, "fewest", "70 x 95 mm", width, "least-visible", accuracy)).Order());

    /// <summary>The grid itself stays as it is; another hoop has its fields on other places.</summary>
    [Theory]
    [InlineData("0.3 mm", "0.3", Tall, 2, "70 x 95 mm", "overlap.width")]
    [InlineData("auto", "1.55", Tall, 2, "70 x 95 mm", "fields.first")]
    [InlineData("auto", "1.7", Frame, 3, "120 x 120 mm", "registration.corners.count")]
    [InlineData("auto", "2", Frame, 3, "120 x 120 mm", "hoop")]
    public void WhereFieldsAreAGrid(string width, string accuracy, string shape, int side, string field, string key)
    {
        var (grid, seams) = ($"{{ columns: {side}, rows: {side} }}", side == 2 ? "least-visible" : "straight");
        Assert.Equal(key, Assert.Single(Followed(Recipe(shape, grid, field, width, seams, accuracy))));
    }

    /// <summary>One width for all joins, and not one after the other.</summary>
    [Theory]
    [InlineData("3 mm", Corner, "least-visible")]
    [InlineData("8 mm", Flag, "straight")]
    public void AnOverlapThatSomeJoinsHaveNoRoomFor(string width, string shape, string seams)
    {
        var recipe = Recipe(shape, "fewest", "70 x 95 mm", width, seams, "0.3");
        var told = Assert.Single(Planned(recipe, "small").Diagnostics, d => d.Code == "SPL3008");
        var fits = Written().Match(told.Message).Groups["value"].Value;
        var followed = Planned(With(recipe, "overlap.width", fits), "small");
        Assert.DoesNotContain(followed.Diagnostics, d => d.Code is "SPL3007" or "SPL3008");
        Assert.NotEmpty(followed.Value.Plans.Single().Joins);
    }

    /// <summary>Where nothing that can be planned helps, one reads so, and what would: here corners are set by 5 mm.</summary>
    [Fact]
    public void WhereNothingHelpsItIsSaid()
    {
        var recipe = Recipe(Wide, Listed(4), "120 x 120 mm", "auto", "straight", "5")
            .Replace("160 x 180 mm", "60 x 60 mm", StringComparison.Ordinal);
        var told = Planned(recipe, "small").Diagnostics.Last(d => d.Code == "SPL3007").Message;
        Assert.Contains("place fields so that they share more ground, or hide", told, StringComparison.Ordinal);
        Assert.DoesNotContain("back the cloth", told, StringComparison.Ordinal);
    }

    /// <summary>What is advised can be written: here misfits and a tenth to spare ask for more than any recipe may have.</summary>
    [Fact]
    public void AWidthThatARecipeCannotHaveIsNotTried()
    {
        var recipe = Recipe(Wide, Listed(4), "120 x 120 mm", "auto", "straight", "5");
        var job = Planned(recipe, "small").Value.Job;
        var drafts = new Drafts(job.Recipe, job.Drawing);
        var draft = drafts.Of(job.Recipe.Hoops[0]).Value;
        Assert.InRange(
            draft.Joins.Max(j => Overlaps.ReachFor(j.Within95, EdgeRule.Interleaved)),
            OverlapRules.Widest / 1.1,
            double.MaxValue
        );
        Assert.Equal(OverlapRules.Widest, Change.All(new(drafts, draft)).First().Width);
    }

    /// <summary>The keys of all advice, once each of it was followed.</summary>
    private static List<string> Followed(string recipe)
    {
        var first = Planned(recipe, "small");
        var before = first.Value.Plans.Single();
        var told = first.Diagnostics.Where(d => d.Code == "SPL3007").ToList();
        var advice = told.Select(d => Advised().Match(d.Message).Groups).Where(g => g["key"].Success).ToList();
        // Each join is spoken of once.
        Assert.Equal(
            before.Joins.Where(j => !j.IsCovered).Select(Name).Order(),
            told.SelectMany(d => Spoken().Match(d.Message).Groups is var g ? Pairs(g) : []).Order()
        );
        foreach (var groups in advice)
        {
            var (key, value) = (groups["key"].Value, groups["value"].Value);
            var followed = key == "hoop" ? Planned(recipe, value) : Planned(With(recipe, key, value), "small");
            Assert.DoesNotContain(followed.Diagnostics, d => d.Code == "SPL3008");
            var after = followed.Value.Plans.Single();
            var isSameRound = after.Hoopings.Select(h => h.Field).SequenceEqual(before.Hoopings.Select(h => h.Field));
            var pairs = Pairs(groups).ToList();
            Assert.All(after.Joins.Where(j => !isSameRound || pairs.Contains(Name(j))), j => Assert.True(j.IsCovered));
            if (groups["misfit"].Success)
                Assert.Contains(
                    after.Joins,
                    j => (Mm(j.Within95), Mm(j.Covers)) == (groups["misfit"].Value, groups["covers"].Value)
                );
            else
                Assert.Empty(after.Joins);
        }
        return [.. advice.Select(g => g["key"].Value)];
    }

    private static IEnumerable<string> Pairs(GroupCollection groups) =>
        groups["more"]
            .Value.Split(", ", StringSplitOptions.RemoveEmptyEntries)
            .Append($"{groups["one"].Value}-{groups["other"].Value}");

    private static string Name(PartJoin join) => $"{Letters.Of(join.Earlier)}-{Letters.Of(join.Later)}";

    private static string Mm(int micrometres) => (micrometres / 1000m).ToString("0.00", CultureInfo.InvariantCulture);

    private static Result<Outlook> Planned(string recipe, string hoop)
    {
        var planned = Pipeline.Plan(
            new("frame.yaml", Encoding.UTF8.GetBytes(recipe), _ => new(default, "none")) { Hoop = hoop }
        );
        Assert.True(planned.Succeeded, string.Join('\n', planned.Diagnostics));
        return planned;
    }

    private static string With(string recipe, string key, string value) =>
        key switch
        {
            "overlap.width" => Regex.Replace(recipe, "width: [^,]+,", $"width: {value},", RegexOptions.None, Limit),
            "registration.corners.count" => recipe.Replace("count: 3", $"count: {value}", StringComparison.Ordinal),
            "fields.first" => recipe.Replace("fields: { ", $"fields: {{ first: {value}, ", StringComparison.Ordinal),
            _ => throw new ArgumentException($"'{key}' is no key that advice names.", nameof(key)),
        };

    private static string Listed(int columns)
    {
        var fields =
            from row in Enumerable.Range(0, 3)
            from column in Enumerable.Range(0, columns)
            where row != 1 || column == 0 || column == columns - 1
            select $"{{ center: [{57 + (103 * column)} mm, {57 + (103 * row)} mm] }}";
        return $"[{string.Join(", ", fields)}]";
    }

    private static string Recipe(
        string shape,
        string place,
        string field,
        string width,
        string seams,
        string accuracy
    ) =>
        $$"""
            splitter: 1
            artwork:
              shapes:
                - { wkt: "{{shape}}", id: frame, fill: "#14304f" }
            hoops:
              - { name: small, field: {{field}} }
              - { name: large, field: 160 x 180 mm }
            fields: { place: {{place}} }
            overlap: { width: {{width}}, seams: {{seams}} }
            registration: { corners: { count: 3 }, accuracy: {{accuracy}} mm }
            output: { folder: parts }
            """;

    private const string Named =
        "(parts (?<one>[A-Z]+) and (?<other>[A-Z]+) may miss|overlap of (?<one>[A-Z]+) and (?<other>[A-Z]+) covers)";

    private const string More = "[^;]*(; so it is with (?<more>[A-Z, -]+))?";

    private static readonly TimeSpan Limit = TimeSpan.FromSeconds(1);

    [GeneratedRegex($"{Named}{More}", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Spoken();

    [GeneratedRegex(
        $"{Named}{More}; (write '(?<key>[a-z.]+): (?<value>[^']+)'|sew it all with (?<key>hoop) (?<value>[a-z]+) .*instead): planned so, (parts may miss by (?<misfit>[0-9.]+) mm against (?<covers>[0-9.]+) mm|no part is cut)",
        RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex Advised();

    [GeneratedRegex("write 'overlap.width: (?<value>[^']+)'", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Written();
}
