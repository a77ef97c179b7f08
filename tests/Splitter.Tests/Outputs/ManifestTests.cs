using System.Text;
using System.Text.Json;
using Splitter.Outputs;
using Splitter.Outputs.Tapes;
using Splitter.Parts;
using Splitter.Stitching;

namespace Splitter.Tests.Outputs;

public sealed class ManifestTests
{
    private static string Manifest { get; } =
        Encoding.UTF8.GetString(HandMade.Set.Files.Single(f => f.Path == "small/manifest.json").Bytes.Span);

    [Fact]
    public void TheManifestIsAsReviewed() => Golden.Check(Golden.Source("Outputs", "Cases", "two-seas.json"), Manifest);

    [Fact]
    public void TheTableOfStitchesIsAsReviewed() =>
        Golden.Check(
            Golden.Source("Outputs", "Cases", "two-seas-B.csv"),
            Encoding.UTF8.GetString(HandMade.Set.Files.Single(f => f.Path == "small/part-B.csv").Bytes.Span)
        );

    [Fact]
    public void ManifestAndSumsComeLastAndListTheOthers()
    {
        var names = HandMade.Set.Files.Select(f => f.Path).ToList();
        Assert.Equal(["small/manifest.json", "small/SHA256SUMS"], names[^2..]);
        Assert.All(names, n => Assert.StartsWith("small/", n, StringComparison.Ordinal));
        var sums = Encoding.UTF8.GetString(HandMade.Set.Files[^1].Bytes.Span);
        Assert.Equal(names[..^1], sums.TrimEnd('\n').Split('\n').Select(l => "small/" + l[66..]));
    }

    /// <summary>
    /// ISO 4915 type 301, needle thread alone: stitches of 4 mm in cloth of 0.6 mm take 4.6 m a thousand; 15 % waste.
    /// </summary>
    [Fact]
    public void AThousandStitchesTakeTheThreadOfTheStandard()
    {
        var points = Enumerable.Range(0, 1001).Select(i => (4.0 * (i % 2), 0.0)).ToArray();
        var part = HandMade.Part(
            HandMade.Plan.Hoopings[0],
            (StepKind.Body, HandMade.Blue, null, [new(HandMade.Block("a", StitchUse.Fill, points), false)])
        );
        var figures = PartFigures.Of(HandMade.Recipe, part, PartTape.Of(part, ""));
        // The first penetration of a thread goes through the cloth and lays no length.
        var (thread, metres) = figures.Threads.Single();
        Assert.Equal("deep water", thread);
        Assert.Equal((4.6 + 0.0006) * 1.15, metres, 9);
        Assert.Equal(1001 / 700.0, figures.Minutes, 9);
    }

    [Fact]
    public void NumbersHaveAtMostThreeDecimalsAndLinesEndInLineFeeds()
    {
        Assert.DoesNotContain("\r", Manifest, StringComparison.Ordinal);
        Assert.EndsWith("}\n", Manifest, StringComparison.Ordinal);
        using var json = JsonDocument.Parse(Manifest);
        Assert.All(Numbers(json.RootElement), n => Assert.Matches(@"\A-?\d+(\.\d{0,2}[1-9])?\z", n));
    }

    private static IEnumerable<string> Numbers(JsonElement element) =>
        element.ValueKind switch
        {
            JsonValueKind.Number => [element.GetRawText()],
            JsonValueKind.Object => element.EnumerateObject().SelectMany(p => Numbers(p.Value)),
            JsonValueKind.Array => element.EnumerateArray().SelectMany(Numbers),
            _ => [],
        };
}
