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

    private static string? Warning(string width, string accuracy) => Found(width, accuracy)?.Message;

    private static Diagnostic? Found(string width, string accuracy)
    {
        var text = Recipe
            .Replace("WIDTH", width, StringComparison.Ordinal)
            .Replace("ACCURACY", accuracy, StringComparison.Ordinal);
        var planned = Pipeline.Plan(
            new("banner.yaml", Encoding.UTF8.GetBytes(text), _ => new(default, "none")) { Hoop = "small" }
        );
        Assert.True(planned.Succeeded, string.Join('\n', planned.Diagnostics));
        return planned.Diagnostics.SingleOrDefault(d => d.Code == "SPL3007");
    }
}
