using Splitter.Tests.Artwork.Tapes;

namespace Splitter.Tests.Tool;

/// <summary>A part of a design that was stitches already, off in the hoop: its corrected tape sews the design's own holes.</summary>
public sealed class CorrectedDesignTests : IDisposable
{
    private const string Recipe = """
        splitter: 1
        title: A band of rows
        artwork: { file: band.dst }
        threads: [{ name: blue, color: "#14304f" }]
        hoops: [{ name: small, field: 70 x 70 mm }]
        output: { folder: parts, files: [tape, csv] }
        """;

    private readonly PartInHoop band = new PartInHoop("band.yaml", Recipe).With(
        "band.dst",
        new HandTape().Rows(0, 0, 100, 40).Bytes
    );

    public void Dispose() => band.Dispose();

    /// <param name="right">And up: steps of the tape, 0.1 mm.</param>
    [Theory]
    [InlineData("0.5 mm right", -5, 0)]
    [InlineData("0.4 mm left 0.6 mm down", 4, 6)]
    public async Task ItsStitchesMoveAgainstTheOffset(string offset, int right, int up)
    {
        Assert.Equal(0, (await band.Make()).ExitCode);
        var planned = band.Stitches("parts", "small", "part-B.csv");
        var ran = await band.Realign("--at", $"A1 {offset}", "--at", $"A3 {offset}");
        Assert.Equal(0, ran.ExitCode);
        var sewn = band.Stitches("parts", "small-part-B-corrected", "part-B-corrected.csv");
        Assert.Equal(
            planned.Where(s => s.Kind == "body").Select(s => (s.U + (right / 10m), s.V + (up / 10m))),
            sewn.Where(s => s.Kind == "body").Select(s => (s.U, s.V))
        );
    }
}
