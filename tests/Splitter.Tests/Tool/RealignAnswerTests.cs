using System.Text.Json;

namespace Splitter.Tests.Tool;

/// <summary>What realign says of what was measured: which figure is wrong, what is not used, what is left open.</summary>
public sealed class RealignAnswerTests : IDisposable
{
    private readonly PartInHoop sails = PartInHoop.OfSails;

    public void Dispose() => sails.Dispose();

    [Theory]
    [InlineData("A1 0.6 mm rigth", "'rigth' is no way; did you mean 'right'? Write")]
    [InlineData("A1 0.6 mm rechts", "'rechts' is no way; write right, left, up or down")]
    [InlineData("A1 0,6 mm right", "'0,6' has a comma; write '0.6'")]
    [InlineData("A1 -0.6 mm right", "'-0.6' has a sign")]
    [InlineData("A1 0.6 mm right 0.2 mm left", "'right' and then 'left'")]
    [InlineData("A1 0.6 m right", "'m' is no unit; write mm, cm or in")]
    [InlineData("A1 0.6 mm", "it does not say which way")]
    [InlineData("A1", "nothing follows")]
    public async Task TheWordThatIsWrongIsNamed(string offset, string expected)
    {
        sails.Written();
        var ran = await sails.Realign("--at", "A3 0.6 mm right, 0.2 mm down", "--at", offset);
        Assert.Equal(2, ran.ExitCode);
        Assert.Contains($"error SPL4020: after 'A1': {expected}", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ASmallLetterIsTakenForWhatWasMeant()
    {
        await sails.Make();
        var part = await ToolRun.Run(
            "realign",
            sails.At("sails.yaml"),
            "--hoop",
            "small",
            "--part",
            "b",
            "--at",
            "A1 1 mm up A3 1 mm up"
        );
        Assert.Contains("no part 'b'; did you mean 'B'?", part.Error, StringComparison.Ordinal);
        var corner = await sails.Realign("--at", "a1 1 mm up A3 1 mm up");
        Assert.Contains("no corner 'a1'; did you mean 'A1'?", corner.Error, StringComparison.Ordinal);
    }

    /// <summary>Both crosses of the part lie on edges: the sail's and, level in the hoop, the mast.</summary>
    [Fact]
    public async Task CrossesOnEdgesAloneShowNoMove()
    {
        await sails.Make();
        var ran = await sails.Realign("--at", "1 0.8 mm down", "--at", "2 0.8 mm down");
        Assert.Equal(2, ran.ExitCode);
        Assert.Contains("error SPL4006", ran.Error, StringComparison.Ordinal);
        Assert.Contains("and there are 0; a cross on an edge", ran.Error, StringComparison.Ordinal);
        Assert.EndsWith("measure at some of A1, A2, A3\n", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task OfACrossOnALineOnlyWhatItShowsIsUsed()
    {
        await sails.Make();
        string[] corners = ["--at", "A1 0.8 mm right", "--at", "A3 0.8 mm right"];
        var alone = await sails.Realign(corners);
        var along = await sails.Realign([.. corners, "--at", "2 5 mm left"]);
        Assert.Contains("warning SPL4014: cross 2 lies on an edge or a line", along.Error, StringComparison.Ordinal);
        Assert.Contains("here up or down; what was read along it is not used", along.Error, StringComparison.Ordinal);
        Assert.Equal(alone.Output, along.Output);
        // Across it counts: here that the part lies 0.3 mm too low there.
        var across = await sails.Realign([.. corners, "--at", "2 0.3 mm down"]);
        Assert.Equal(0, across.ExitCode);
        Assert.DoesNotContain("SPL4014", across.Error, StringComparison.Ordinal);
        Assert.NotEqual(alone.Output, across.Output);
        Assert.Contains(
            "check-mast",
            sails.Stitches("parts", "small-part-B-corrected", "part-B-corrected.csv").Select(s => s.Of)
        );
    }

    /// <summary>Corners near each other leave the far end of the seam open, which a far one would close.</summary>
    [Fact]
    public async Task AJoinThatIsNoLongerCoveredIsWarnedOfWithWhatWouldHelp()
    {
        const string Narrow = "overlap: { seams: straight, width: 0.5 mm }";
        await sails.Make();
        File.WriteAllText(
            sails.At("sails.yaml"),
            File.ReadAllText(sails.At("sails.yaml"))
                .Replace("overlap: { seams: straight }", Narrow, StringComparison.Ordinal)
        );
        await ToolRun.Run("make", sails.At("sails.yaml"), "--hoop", "small");
        var ran = await sails.Realign("--at", "A1 0.6 mm right", "--at", "A2 0.6 mm right");
        Assert.Equal(0, ran.ExitCode);
        Assert.Contains("warning SPL4016: A and B may then miss each other", ran.Error, StringComparison.Ordinal);
        Assert.Contains("measure at A3, too: it would be up to", ran.Error, StringComparison.Ordinal);
        Assert.Contains("not covered", ran.Output, StringComparison.Ordinal);
        var far = await sails.Realign("--at", "A1 0.6 mm right", "--at", "A3 0.6 mm right");
        Assert.DoesNotContain("SPL4016", far.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task TheFigureThatDoesNotGoWithTheOthersIsNamed()
    {
        await sails.Make();
        var ran = await sails.Realign("--at", "A1 1 mm right", "--at", "A2 1 mm right", "--at", "A3 1 mm left");
        Assert.Equal(2, ran.ExitCode);
        Assert.Contains("if A3 were 1.00 mm right, all would agree", ran.Error, StringComparison.Ordinal);
    }

    /// <summary>What was sewn from other tapes has other corners, and their names mean nothing here.</summary>
    [Fact]
    public async Task ATapeThatIsNoLongerMadeIsToldOfBeforeACornerThatIsNotThere()
    {
        await sails.Make();
        sails.Written("fields: { clearance: 2.5 mm }");
        var ran = await sails.Realign("--at", "A9 1 mm right", "--at", "A3 1 mm right");
        Assert.Equal(2, ran.ExitCode);
        Assert.Contains("part-B.dst: error SPL4030", ran.Error, StringComparison.Ordinal);
        Assert.Contains("(the recipe sails.yaml changed)", ran.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("SPL4003", ran.Error, StringComparison.Ordinal);
    }

    /// <summary>The move is told for the middle of the hoop: so far the stitch goes that lies nearest to it.</summary>
    [Theory]
    [InlineData("A1 0.7 mm left", "A3 0.7 mm right", "drawn in", "shorter along the warp")]
    [InlineData("A1 0.7 mm right", "A3 0.7 mm left", "stretched", "longer along the warp")]
    public async Task AStretchIsToldAsWhatItIsAndTheMoveForTheMiddle(
        string one,
        string other,
        string given,
        string becomes
    )
    {
        await sails.Make("registration: { follow-stretch: 2 % }");
        var ran = await sails.Realign("--at", one, "--at", other);
        Assert.Contains($"lies on cloth that has {given}: it becomes", ran.Output, StringComparison.Ordinal);
        Assert.Contains(becomes, ran.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("-", ran.Output.Split("\n\n")[0], StringComparison.Ordinal);
        using var manifest = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(sails.Corrected, "manifest.json")));
        var move = manifest.RootElement.GetProperty("correction").GetProperty("move");
        var before = sails.Stitches("parts", "small", "part-B.csv").Where(s => s.Kind == "body");
        var after = sails
            .Stitches("parts", "small-part-B-corrected", "part-B-corrected.csv")
            .Where(s => s.Kind == "body");
        var (was, now) = before.Zip(after).MinBy(p => (p.First.U * p.First.U) + (p.First.V * p.First.V));
        // Of a stitch 15 mm from the middle, 2 % and half a degree make another 0.35 mm, and the grid 0.05 mm.
        Assert.InRange(now.U - was.U - move.GetProperty("right_mm").GetDecimal(), -0.4m, 0.4m);
        Assert.InRange(now.V - was.V - move.GetProperty("up_mm").GetDecimal(), -0.4m, 0.4m);
    }
}
