using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Splitter.Planning;

namespace Splitter.Tests.Planning.Remedies;

/// <summary>
/// Advice is written into the recipe, and what was promised comes true: with more corners at the join that was warned of,
/// with another first field at the worst join of all.
/// </summary>
public sealed partial class AdviceTests
{
    /// <summary>A frame, sewn all round by fields that share 11 mm: where the round closes, errors of both ways add up.</summary>
    private const string Square =
        "POLYGON ((5 5, 315 5, 315 315, 5 315, 5 5), (100 100, 100 220, 220 220, 220 100, 100 100))";

    private const string Wide =
        "POLYGON ((5 5, 415 5, 415 315, 5 315, 5 5), (40 100, 40 220, 380 220, 380 100, 40 100))";

    [Fact]
    public void MoreCorners()
    {
        var recipe = Recipe(Square, columns: 3, accuracy: "1.75");
        var told = Assert.Single(Told(recipe), t => t.Key == "registration.corners.count");
        var followed = recipe.Replace(
            "accuracy:",
            $"corners: {{ count: {told.Value} }}, accuracy:",
            StringComparison.Ordinal
        );
        var plan = Planned(followed);
        var join = Assert.Single(plan.Joins, j => (Letters.Of(j.Earlier), Letters.Of(j.Later)) == told.Parts);
        Assert.Equal(told.Misfit, join.Within95 / 1000.0, 2);
        Assert.InRange(told.Misfit, 0, told.Covered);
        Assert.DoesNotContain(Told(followed), t => t.Parts == told.Parts);
    }

    [Theory]
    [InlineData("1")]
    [InlineData("1.2")]
    public void AnotherFirstField(string accuracy)
    {
        var recipe = Recipe(Wide, columns: 4, accuracy);
        var told = Assert.Single(Told(recipe).Where(t => t.Key == "fields.first").DistinctBy(t => t.Value));
        var followed = recipe.Replace("fields: { ", $"fields: {{ first: {told.Value}, ", StringComparison.Ordinal);
        var plan = Planned(followed);
        Assert.Contains(plan.Joins, j => Math.Abs((j.Within95 / 1000.0) - told.Misfit) <= 0.005);
        Assert.InRange(told.Misfit, 0, told.Covered);
        Assert.DoesNotContain(Pipeline.Plan(Request(followed)).Diagnostics, d => d.Code == "SPL3007");
    }

    private sealed record Advice((string, string) Parts, string Key, string Value, double Misfit, double Covered);

    private static List<Advice> Told(string recipe) =>
        [
            .. Pipeline
                .Plan(Request(recipe))
                .Diagnostics.Where(d => d.Code == "SPL3007")
                .Select(d => Advised().Match(d.Message).Groups)
                .Where(g => g["key"].Success)
                .Select(g => new Advice(
                    (g["one"].Value, g["other"].Value),
                    g["key"].Value,
                    g["value"].Value,
                    double.Parse(g["misfit"].Value, CultureInfo.InvariantCulture),
                    double.Parse(g["covered"].Value, CultureInfo.InvariantCulture)
                )),
        ];

    private static Plan Planned(string recipe) => Pipeline.Plan(Request(recipe)).Value.Plans.Single();

    private static Request Request(string recipe) =>
        new("frame.yaml", Encoding.UTF8.GetBytes(recipe), _ => new(default, "none"));

    private static string Recipe(string frame, int columns, string accuracy)
    {
        var fields =
            from row in Enumerable.Range(0, 3)
            from column in Enumerable.Range(0, columns)
            where row != 1 || column == 0 || column == columns - 1
            select $"{{ center: [{57 + (103 * column)} mm, {57 + (103 * row)} mm] }}";
        return $$"""
            splitter: 1
            artwork:
              shapes:
                - { wkt: "{{frame}}", id: frame, fill: "#14304f" }
            hoops:
              - { name: small, field: 120 x 120 mm }
            fields: { place: [{{string.Join(", ", fields)}}] }
            overlap: { seams: straight }
            registration: { accuracy: {{accuracy}} mm }
            output: { folder: parts }
            """;
    }

    [GeneratedRegex(
        "parts (?<one>[A-Z]+) and (?<other>[A-Z]+) may .*; write '(?<key>[a-z.]+): (?<value>[^']+)': planned so, they may miss by (?<misfit>[0-9.]+) mm against (?<covered>[0-9.]+) mm",
        RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex Advised();
}
