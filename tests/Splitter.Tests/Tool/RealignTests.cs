using System.Globalization;
using System.Text.Json;

namespace Splitter.Tests.Tool;

/// <summary>What realign does with the second part of a small work, which is set by A1 and A2.</summary>
public sealed class RealignTests : IDisposable
{
    private readonly string root = Directory.CreateTempSubdirectory("splitter-realign-").FullName;

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Fact]
    public async Task APartThatLiesTooFarToTheRightIsMovedBackAndSewnOn()
    {
        var ran = await Realign("--at", "A1", "0.6", "mm", "right", "--at", "A2 0.6mm right");
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.Contains("It goes 0.60 mm left, as the hoop lies before you", ran.Output, StringComparison.Ordinal);
        var folder = Path.Combine(root, "parts", "small-part-B-corrected");
        Assert.Equal(
            [
                ".splitter-recipe",
                "SHA256SUMS",
                "manifest.json",
                "part-B-corrected.csv",
                "part-B-corrected.dst",
                "worksheet.html",
            ],
            Directory.GetFiles(folder).Select(Path.GetFileName).Order(StringComparer.Ordinal)
        );
        // All that comes after the crosses, each stitch by the move.
        var planned = Stitches(Path.Combine(root, "parts", "small", "part-B.csv"))
            .Where(s => s.Kind is "body" or "next-corners")
            .Select(s => s with { U = s.U - 0.6m });
        Assert.Equal(planned, Stitches(Path.Combine(folder, "part-B-corrected.csv")).Where(s => s.Kind != "alignment"));
        // The set itself is what it was.
        Assert.Equal(0, (await ToolRun.Run("check", At("sails.yaml"), "--hoop", "small")).ExitCode);
    }

    [Fact]
    public async Task TheManifestNamesTheOriginalAndTheMove()
    {
        File.WriteAllText(
            At("b.yaml"),
            """
            part: B
            offsets:
              - { at: A1, right: 0.6 mm, down: 0.4 mm }
              - { at: A2, right: 0.6 mm, down: 0.4 mm }
            """
        );
        await ToolRun.Run("make", Written());
        var call = new[]
        {
            "realign",
            At("sails.yaml"),
            "--hoop",
            "small",
            "--offsets",
            At("b.yaml"),
            "--format",
            "json",
        };
        var ran = await ToolRun.Run(call);
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        using var answer = JsonDocument.Parse(ran.Output);
        var folder = answer.RootElement.GetProperty("result").GetProperty("folder").GetString()!;
        using var manifest = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(folder, "manifest.json")));
        var correction = manifest.RootElement.GetProperty("correction");
        Assert.Equal("B", correction.GetProperty("original").GetProperty("part").GetString());
        Assert.Contains(
            $"{correction.GetProperty("original").GetProperty("sha256").GetString()}  part-B.dst",
            File.ReadAllText(Path.Combine(root, "parts", "small", "SHA256SUMS")),
            StringComparison.Ordinal
        );
        Assert.Equal("moved", correction.GetProperty("verdict").GetString());
        var move = correction.GetProperty("move");
        Assert.Equal(-0.6m, move.GetProperty("right_mm").GetDecimal());
        Assert.Equal(0.4m, move.GetProperty("up_mm").GetDecimal());
        Assert.Equal(0, move.GetProperty("clockwise_deg").GetDecimal());
        // The same call writes the same bytes.
        var before = Directory.GetFiles(folder).Order(StringComparer.Ordinal).Select(File.ReadAllBytes).ToArray();
        await ToolRun.Run(call);
        Assert.Equal(before, Directory.GetFiles(folder).Order(StringComparer.Ordinal).Select(File.ReadAllBytes));
    }

    [Fact]
    public async Task ACorrectedTapeOfAnEarlierPartIsWarnedOf()
    {
        await Realign("--at", "A1", "0.6", "mm", "right", "--at", "A2 0.6mm right");
        string[] call = ["check", At("sails.yaml"), "--hoop", "small"];
        Assert.Equal("", (await ToolRun.Run(call)).Error);
        File.WriteAllText(
            At("sails.yaml"),
            File.ReadAllText(At("sails.yaml")).Replace("100 10,", "100 12,", StringComparison.Ordinal)
        );
        foreach (var ran in (Ran[])[await ToolRun.Run(["make", .. call[1..]]), await ToolRun.Run(call)])
        {
            Assert.Equal(0, ran.ExitCode);
            Assert.StartsWith(
                $"{At("parts")}/small-part-B-corrected: warning SPL5058: this corrected tape goes with an earlier part B",
                ran.Error,
                StringComparison.Ordinal
            );
        }
    }

    [Fact]
    public async Task WhatFitsIsLeftAsItIs()
    {
        var ran = await Realign("--at", "A1 0.1 mm right", "--at", "A2 0.1 mm up");
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.Contains("sew on with it as it is", ran.Output, StringComparison.Ordinal);
        Assert.Equal(["small"], Directory.GetDirectories(At("parts")).Select(Path.GetFileName));
    }

    [Theory]
    [InlineData("SPL4003", "--at", "A1 0.6 mm right", "--at", "Z9 0.6 mm right")]
    [InlineData("SPL4004", "--at", "A1 0.6 mm right", "--at", "A1 0.6 mm right")]
    [InlineData("SPL4005", "--at", "A1 30 mm right", "--at", "A2 30 mm right")]
    [InlineData("SPL4006", "--at", "A1 0.6 mm right")]
    [InlineData("SPL4012", "--at", "A1 15 mm right", "--at", "A2 15 mm right")]
    [InlineData("SPL4023", "--at", "A1 0.6 right", "--at", "A2 0.6 mm right")]
    [InlineData("SPL4023", "--at", "A1 0.6 mm right 2 down", "--at", "A2 0.6 mm right")]
    [InlineData("SPL4020", "--at", "A1", "--at", "A2 0.6 mm right")]
    [InlineData("SPL4020", "--at", "A1 0.6 mm right 0.2 mm left", "--at", "A2 0.6 mm right")]
    public async Task AnImpossibleMoveIsRefusedWithAReasonAndWritesNothing(string code, params string[] offsets)
    {
        var ran = await Realign(offsets);
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.StartsWith($"splitter: error {code}: ", ran.Error, StringComparison.Ordinal);
        Assert.Equal(["small"], Directory.GetDirectories(At("parts")).Select(Path.GetFileName));
    }

    /// <summary>What it says would do is done; what stays free in any case is named.</summary>
    [Fact]
    public async Task AMoveThatIsTooLargeSaysHowLargeOneWouldDo()
    {
        var refused = (await Realign("--at", "A1 15 mm right", "--at", "A2 15 mm right")).Error;
        Assert.Contains("the field less the last 1 mm at its edge", refused, StringComparison.Ordinal);
        var room = refused.Split("Up to ")[1].Split(" mm that way would do")[0];
        var less = await Realign("--at", $"A1 {room} mm right", "--at", $"A2 {room} mm right");
        Assert.DoesNotContain("SPL4012", less.Error, StringComparison.Ordinal);
        Assert.NotEqual("0.0", room);
    }

    /// <summary>Two corners, 111 mm from each other, that came out 1.6 mm further apart across the work: no move does that.</summary>
    [Fact]
    public async Task ClothThatStretchedIsRefusedAndFollowedWhereTheRecipeAllowsIt()
    {
        string[] apart = ["--at", "A1 0.8 mm left", "--at", "A2 0.8 mm right"];
        var refused = await Realign(apart);
        Assert.Equal(2, refused.ExitCode);
        Assert.Contains("error SPL4011: ", refused.Error, StringComparison.Ordinal);
        Written("registration: { follow-stretch: 2 %, corners: { count: 2 } }");
        var followed = await ToolRun.Run([
            "realign",
            At("sails.yaml"),
            "--hoop",
            "small",
            "--part",
            "B",
            "--format",
            "json",
            .. apart,
        ]);
        Assert.Equal((0, ""), (followed.ExitCode, followed.Error));
        using var answer = JsonDocument.Parse(followed.Output);
        var result = answer.RootElement.GetProperty("result");
        Assert.Equal("stretched", result.GetProperty("verdict").GetString());
        // 1.6 mm over the 90 mm that lie along the warp between the two; of the weft they tell nothing.
        var move = result.GetProperty("move");
        Assert.Equal(-1.78m, move.GetProperty("longer_along_warp_percent").GetDecimal(), 2);
        Assert.Equal(0, move.GetProperty("longer_along_weft_percent").GetDecimal(), 2);
    }

    [Fact]
    public async Task ATapeThatTheRecipeNoLongerMakesIsNotMoved()
    {
        await ToolRun.Run("make", Written(), "--hoop", "small");
        File.AppendAllText(Path.Combine(root, "parts", "small", "part-B.dst"), "x");
        var ran = await ToolRun.Run([
            "realign",
            At("sails.yaml"),
            "--hoop",
            "small",
            "--part",
            "B",
            "--at",
            "A1 0.6 mm right A2 0.6 mm right",
        ]);
        Assert.Equal(2, ran.ExitCode);
        Assert.Contains("part-B.dst: error SPL4030: ", ran.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("SPL4001", "Q")]
    [InlineData("SPL4002", "A")]
    public async Task OnlyAPartThatMeetsSewnWorkCanBeMoved(string code, string part)
    {
        var ran = await ToolRun.Run([
            "realign",
            Written(),
            "--hoop",
            "small",
            "--part",
            part,
            "--at",
            "A1 0.6 mm right A2 0.6 mm right",
        ]);
        Assert.Contains(code, ran.Error, StringComparison.Ordinal);
        Assert.Equal((2, false), (ran.ExitCode, Directory.Exists(At("parts"))));
    }

    [Fact]
    public async Task TheHoopMustBeKnown()
    {
        var ran = await ToolRun.Run(["realign", Written(), "--part", "B", "--at", "A1 0.6 mm right A2 0.6 mm right"]);
        Assert.Contains("SPL4013", ran.Error, StringComparison.Ordinal);
        Assert.Equal((2, false), (ran.ExitCode, Directory.Exists(At("parts"))));
    }

    [Theory]
    [InlineData(
        "part: B\noffsets:\n  - { at: A1, right: 1 mm, left: 1 mm }\n  - { at: A2, up: 1 mm }\n",
        "(3,34): error SPL4021"
    )]
    [InlineData("part: B\noffsets:\n  - { at: A1 }\n  - { at: A2, up: 1 mm }\n", "(3,5): error SPL4022")]
    [InlineData("part: B\noffsets:\n  - { at: A1, sideways: 1 mm }\n  - { at: A2, up: 1 mm }\n", "(3,15): error SPL10")]
    [InlineData("part: B\noffsets:\n  - { at: A1, up: 1 }\n  - { at: A2, up: 1 mm }\n", "(3,19): error SPL10")]
    public async Task AMistakeInAFileIsNamedWithItsPlace(string text, string expected)
    {
        File.WriteAllText(At("b.yaml"), text);
        var ran = await ToolRun.Run("realign", Written(), "--hoop", "small", "--offsets", At("b.yaml"));
        Assert.Equal(2, ran.ExitCode);
        Assert.Contains($"b.yaml{expected}", ran.Error, StringComparison.Ordinal);
    }

    private async Task<Ran> Realign(params string[] offsets)
    {
        await ToolRun.Run("make", Written(), "--hoop", "small");
        return await ToolRun.Run(["realign", At("sails.yaml"), "--hoop", "small", "--part", "B", .. offsets]);
    }

    private string Written(string more = "registration: { corners: { count: 2 } }")
    {
        File.WriteAllText(
            At("sails.yaml"),
            CommandTests.Recipe.Replace("files: [tape, csv]", "files: [tape, csv, worksheet]", StringComparison.Ordinal)
                + "\n"
                + more
                + "\n"
        );
        return At("sails.yaml");
    }

    private string At(string name) => Path.Combine(root, name);

    private static IEnumerable<Sewn> Stitches(string file) =>
        File.ReadLines(file)
            .Skip(1)
            .Select(line => line.Split(','))
            .Select(c => new Sewn(
                c[1],
                c[3],
                c[4],
                decimal.Parse(c[5], CultureInfo.InvariantCulture),
                decimal.Parse(c[6], CultureInfo.InvariantCulture),
                c[9]
            ));

    private sealed record Sewn(string Kind, string Of, string Use, decimal U, decimal V, string Command);
}
