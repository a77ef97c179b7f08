using System.Text;
using Splitter.Diagnostics;

namespace Splitter.Tests.Planning.Remedies;

/// <summary>Advice is followed, and has to hold.</summary>
public sealed class JoinRemediesTests
{
    private const string Recipe = """
        splitter: 1
        artwork:
          shapes:
            - { wkt: "POLYGON ((0 0, 100 0, 100 335, 0 335, 0 0))", id: banner, fill: "#14304f" }
        hoops:
          - { name: small, field: 130 x 180 mm }
          - { name: large, field: 200 x 400 mm }
        overlap: { width: WIDTH, seams: straight }
        registration: { accuracy: ACCURACY mm }
        output: { folder: parts }
        """;

    [Fact]
    public void AnOverlapThatIsTooNarrowIsWidened()
    {
        var narrow = Warning("0.3 mm", "0.3");
        Assert.Contains("write 'overlap.width: auto': planned so, parts may miss by", narrow, StringComparison.Ordinal);
        Assert.Null(Warning("auto", "0.3"));
    }

    /// <summary>Fields share 13 mm, too little for corners set that roughly, and the large hoop sews all in one.</summary>
    [Fact]
    public void WhereNoOverlapIsWideEnoughALargerHoopIsPlanned()
    {
        var wide = Warning("auto", "5");
        Assert.Contains(
            "sew it all with hoop large (200 x 400 mm) instead: planned so, no part is cut",
            wide,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void TheSameAdviceEveryTime() => Assert.Equal(Warning("0.3 mm", "0.5"), Warning("0.3 mm", "0.5"));

    /// <summary>An editor goes to the key that is to be changed; line 8 is the recipe's overlap, line 7 its larger hoop's list.</summary>
    [Fact]
    public void TheWarningStandsAtTheKeyToChange()
    {
        Assert.Equal(8, Found("0.3 mm", "0.3")!.Place.Line);
        Assert.True(Found("auto", "5")!.Place is { Line: >= 5 and <= 7, Column: > 0 });
    }

    /// <summary>
    /// Both fields end where the strip of 13 mm does that they share, which has room for two corners with arms of 20 mm: no
    /// wider overlap, no third corner and no other first field can be had, and there is no larger hoop.
    /// </summary>
    [Fact]
    public void WhereNothingCanBeHadItIsSaidThatNothingMakesItBetter()
    {
        var planned = Planned(
            """
            splitter: 1
            artwork: { shapes: [{ wkt: "POLYGON ((1 1, 186 1, 186 45, 1 45, 1 1))", fill: "#14304f" }] }
            hoops: [{ name: only, field: 101 x 48 mm }]
            fields: { place: [{ center: [50 mm, 23 mm] }, { center: [137 mm, 23 mm] }], clearance: 0.5 mm }
            overlap: { seams: straight }
            registration: { accuracy: 5 mm, corners: { arm: 20 mm } }
            """,
            "only"
        );
        Assert.Contains(
            "changes that were planned none makes it better; set corners more closely",
            planned!.Message,
            StringComparison.Ordinal
        );
    }

    /// <summary>A grid that a person asked for is planned again as anything else is.</summary>
    [Fact]
    public void GridsAreMendedToo()
    {
        var planned = Planned(
            """
            splitter: 1
            artwork: { shapes: [{ wkt: "POLYGON ((0 0, 220 0, 220 300, 0 300, 0 0))", fill: "#14304f" }] }
            hoops: [{ name: only, field: 130 x 180 mm }]
            fields: { place: { columns: 2, rows: 2 } }
            overlap: { width: 0.3 mm, seams: straight }
            """,
            "only"
        );
        Assert.Contains("write 'overlap.width: auto': planned so", planned!.Message, StringComparison.Ordinal);
    }

    private static string? Warning(string width, string accuracy) => Found(width, accuracy)?.Message;

    private static Diagnostic? Found(string width, string accuracy)
    {
        var text = Recipe
            .Replace("WIDTH", width, StringComparison.Ordinal)
            .Replace("ACCURACY", accuracy, StringComparison.Ordinal);
        return Planned(text, "small");
    }

    private static Diagnostic? Planned(string text, string hoop)
    {
        var planned = Pipeline.Plan(
            new("banner.yaml", Encoding.UTF8.GetBytes(text), _ => new(default, "none")) { Hoop = hoop }
        );
        Assert.True(planned.Succeeded, string.Join('\n', planned.Diagnostics));
        return planned.Diagnostics.SingleOrDefault(d => d.Code == "SPL3007");
    }
}
