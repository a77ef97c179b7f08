using System.Text.Json;

namespace Splitter.Tests.Tool;

/// <summary>
/// What a person finds out before a corrected tape sews anything that stays: the machine lays it where it laid the part, and
/// its crosses meet the sewn work, or not.
/// </summary>
public sealed class CorrectedTapeTests : IDisposable
{
    private readonly PartInHoop sails = PartInHoop.OfSails;

    public void Dispose() => sails.Dispose();

    /// <summary>
    /// A machine that centres a design by its extents lays both alike if their middles are the same place; the corners and crosses
    /// that are sewn already are no more in the corrected one.
    /// </summary>
    [Theory]
    [InlineData("A1 0.6 mm right 0.2 mm down", "A3 0.5 mm right")]
    [InlineData("A1 0.6 mm left 0.4 mm up", "A3 0.6 mm left 0.4 mm up")]
    [InlineData("A1 0.5 mm up", "A3 0.6 mm up")]
    [InlineData("A1 0.6 mm right 0.2 mm down", "A2 0.7 mm right")]
    public async Task ItsExtentsHaveTheMiddleOfThePartsOwn(string one, string other)
    {
        await sails.Make();
        var ran = await sails.Realign("--at", one, "--at", other);
        Assert.Equal(0, ran.ExitCode);
        var own = sails.Extents("parts", "small", "part-B.dst");
        var corrected = sails.Extents("parts", "small-part-B-corrected", "part-B-corrected.dst");
        Assert.Equal(own.Left + own.Right, corrected.Left + corrected.Right);
        Assert.Equal(own.Bottom + own.Top, corrected.Bottom + corrected.Top);
        // They are the very same, but for what the move and the strokes of crosses on corners at their edge take past them,
        // 0.7 and 1 mm, and as much at the other side.
        Assert.InRange(corrected.Right - corrected.Left, own.Right - own.Left, own.Right - own.Left + 34);
        Assert.InRange(corrected.Top - corrected.Bottom, own.Top - own.Bottom, own.Top - own.Bottom + 34);
    }

    [Fact]
    public async Task ItBeginsWithCrossesOnTheMeasuredCornersAndAStop()
    {
        await sails.Make();
        var ran = await sails.Realign("--at", "A1 0.6 mm right 0.2 mm down", "--at", "A3 0.6 mm right 0.2 mm down");
        Assert.Equal(0, ran.ExitCode);
        Assert.Contains("sew on only if they meet", ran.Output, StringComparison.Ordinal);
        var sewn = sails.Stitches("parts", "small-part-B-corrected", "part-B-corrected.csv");
        Assert.Equal(["alignment", "body"], sewn.Select(s => s.Kind).Distinct());
        var planned = sails.Stitches("parts", "small", "part-B.csv");
        foreach (var corner in new[] { "A1", "A3" })
        {
            // Three holes of a corner are on each arm and one where they meet, the middle one.
            var hole = planned.Where(s => s.Of == corner).ToList() is var holes ? holes[holes.Count / 2] : null;
            var cross = sewn.Where(s => s.Of == $"check-{corner}").ToList();
            Assert.Equal((hole!.U - 0.6m, hole.V + 0.2m), Middle(cross));
        }
        using var manifest = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(sails.Corrected, "manifest.json")));
        var steps = manifest.RootElement.GetProperty("parts")[0].GetProperty("steps");
        Assert.Equal("alignment", steps[0].GetProperty("kind").GetString());
        Assert.Contains("do not sew on", steps[0].GetProperty("stop").GetString(), StringComparison.Ordinal);
        Assert.Equal(
            ["A1", "A3"],
            manifest
                .RootElement.GetProperty("correction")
                .GetProperty("crosses")
                .EnumerateArray()
                .Select(c => c.GetProperty("meets").GetString())
        );
        var page = File.ReadAllText(Path.Combine(sails.Corrected, "worksheet.html"));
        Assert.Contains("the hole of corner A3", page, StringComparison.Ordinal);
        Assert.Contains("0.6\u00a0mm to the right, 0.2\u00a0mm down", page, StringComparison.Ordinal);
        Assert.Contains("<svg", page, StringComparison.Ordinal);
    }

    /// <summary>A tape that counts no more is told of at each later run, whatever comes of that.</summary>
    [Fact]
    public async Task AnEarlierCorrectedTapeIsNeverPassedOverInSilence()
    {
        await sails.Make();
        string[] once = ["--at", "A1 0.6 mm right", "--at", "A3 0.6 mm right"];
        Assert.Equal("", (await sails.Realign(once)).Error);
        Assert.Equal("", (await sails.Realign(once)).Error);
        var fits = await sails.Realign("--at", "A1 0.1 mm right", "--at", "A3 0.1 mm right");
        Assert.Contains("warning SPL4031: the corrected tape of part B", fits.Error, StringComparison.Ordinal);
        var refused = await sails.Realign("--at", "A1 2 mm right", "--at", "A3 2 mm left");
        Assert.Equal(2, refused.ExitCode);
        Assert.Contains(
            "warning SPL4033: the corrected tape of part B here is by",
            refused.Error,
            StringComparison.Ordinal
        );
        var another = await sails.Realign("--at", "A1 0.8 mm right", "--at", "A3 0.8 mm right");
        Assert.Equal(0, another.ExitCode);
        Assert.Contains("warning SPL4032", another.Error, StringComparison.Ordinal);
    }

    /// <summary>The clearance is what a part may be moved into; its last millimetre is not.</summary>
    [Fact]
    public async Task APartMayBeMovedIntoTheClearanceAndIsThenWarnedOf()
    {
        await sails.Make();
        var near = await sails.Realign("--at", "A1 2.5 mm right", "--at", "A3 2.5 mm right");
        Assert.Equal(0, near.ExitCode);
        Assert.Contains("warning SPL4015", near.Error, StringComparison.Ordinal);
        Assert.Contains("up to 2.0 mm from the field's edge at the left", near.Error, StringComparison.Ordinal);
        var beyond = await sails.Realign("--at", "A1 4 mm right", "--at", "A3 4 mm right");
        Assert.Equal(2, beyond.ExitCode);
        Assert.Contains("error SPL4012", beyond.Error, StringComparison.Ordinal);
        Assert.Contains("Up to 3.5 mm that way", beyond.Error, StringComparison.Ordinal);
    }

    private static (decimal U, decimal V) Middle(List<Sewn> cross) =>
        ((cross.Min(s => s.U) + cross.Max(s => s.U)) / 2, (cross.Min(s => s.V) + cross.Max(s => s.V)) / 2);
}
