using System.Text.Json.Nodes;
using Json.Schema;

namespace Splitter.Tests.Tool;

/// <summary>What a reviewer is told of two sets, or of a set and its recipe.</summary>
public sealed class CompareCommandTests : IDisposable
{
    private readonly string root = Directory.CreateTempSubdirectory("splitter-compare-").FullName;

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Fact]
    public async Task TheSameSetsDoNotDiffer()
    {
        await Make("old", CommandTests.Recipe);
        await Make("new", CommandTests.Recipe);
        var ran = await ToolRun.Run("compare", At("old"), At("new"), "--pictures", At("pictures"));
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.Equal(2, ran.Output.TrimEnd().Split('\n').Length);
        Assert.All(ran.Output.TrimEnd().Split('\n'), line => Assert.EndsWith("files are the same", line));
        Assert.False(Directory.Exists(At("pictures")));
    }

    [Fact]
    public async Task AMovedMastIsToldInStepsStitchesThreadAndTime()
    {
        await Make("old", CommandTests.Recipe);
        await Make("new", Moved);
        var ran = await ToolRun.Run("compare", At("old", "large"), At("new", "large"), "--pictures", At("pictures"));
        Assert.Equal((1, ""), (ran.ExitCode, ran.Error));
        var lines = ran.Output.Split('\n');
        Assert.StartsWith($"{At("new", "large")}: ", lines[0], StringComparison.Ordinal);
        Assert.Equal("  what is sewn differs", lines[1]);
        Assert.StartsWith("  why: the recipe sails.yaml changed; the work is 104.2 x ", lines[2]);
        Assert.Equal("  parts: changed A", lines[3]);
        Assert.Matches("^  in changed parts: [0-9]+ needle holes are new, [0-9]+ are gone$", lines[4]);
        Assert.Contains("thread: #76584a -", ran.Output, StringComparison.Ordinal);
        Assert.Matches(
            @"hoop large, part A: step \d+ \(#76584a\) moved by up to [0-9.]+ mm; \d+ stitches fewer",
            ran.Output
        );
        Assert.DoesNotContain("#14304f) moved", ran.Output, StringComparison.Ordinal);
        Assert.Equal(
            ["large-part-A.png", "large-part-A.svg"],
            Directory.EnumerateFiles(At("pictures")).Select(Path.GetFileName).Order(StringComparer.Ordinal)
        );
        var picture = await File.ReadAllTextAsync(At("pictures", "large-part-A.svg"));
        Assert.All(["before", "after", "difference"], word => Assert.Contains(word, picture, StringComparison.Ordinal));
    }

    [Fact]
    public async Task AllLinesAreToldWhenAskedFor()
    {
        var many = CommandTests.Recipe.Replace(
            "  shapes:",
            "  shapes:\n"
                + string.Join(
                    '\n',
                    Enumerable
                        .Range(0, 70)
                        .Select(i =>
                            $"    - {{ wkt: \"LINESTRING (0 {3 * i}, 9 {3 * i})\", id: r{i}, stroke: \"#76584a\", stroke-width: 0.4 mm }}"
                        )
                ),
            StringComparison.Ordinal
        );
        var recipe = await Make("old", CommandTests.Recipe);
        await File.WriteAllTextAsync(recipe, many);
        string[] call = ["check", recipe, "--out", At("old"), "--hoop", "large"];
        var some = (await ToolRun.Run(call)).Output;
        Assert.Matches("    and [0-9]+ lines more; '--all' tells them\n", some);
        var all = (await ToolRun.Run([.. call, "--all"])).Output;
        Assert.StartsWith(some[..some.IndexOf("    and ", StringComparison.Ordinal)], all, StringComparison.Ordinal);
        Assert.DoesNotContain("lines more", all, StringComparison.Ordinal);
        Assert.Contains("r69 ", all, StringComparison.Ordinal);
    }

    [Fact]
    public async Task FilesOfBothSetsAreCounted()
    {
        await Make("old", CommandTests.Recipe);
        await Make("new", CommandTests.Recipe.Replace("[tape, csv]", "[tape]", StringComparison.Ordinal));
        var ran = await ToolRun.Run("compare", At("old", "large"), At("new", "large"));
        // Tape, list, manifest and sums; the tape alone is the same.
        Assert.Contains("3 of 4 files are not the same", ran.Output, StringComparison.Ordinal);
    }

    /// <summary>Words in a drawing that are not sewn change no stitch: the file is the reason all the same.</summary>
    [Fact]
    public async Task WhatOfTheInputChangedIsTold()
    {
        const string Drawing = """
            <svg xmlns="http://www.w3.org/2000/svg" width="90mm" height="90mm" viewBox="0 0 90 90">
              <rect id="r" width="90" height="90" fill="#14304f"/><!-- -->
            </svg>
            """;
        await File.WriteAllTextAsync(At("pond.svg"), Drawing);
        var text = """
            splitter: 1
            title: Pond
            artwork: { file: pond.svg, width: 90 mm }
            hoops: [{ name: large, field: 200 x 300 mm }]
            output: { folder: parts, files: [tape] }
            """;
        var recipe = await Make("old", text);
        await File.WriteAllTextAsync(At("pond.svg"), Drawing.Replace("<!-- -->", "", StringComparison.Ordinal));
        var drawing = (await ToolRun.Run("check", recipe, "--out", At("old"))).Output.Split('\n');
        Assert.StartsWith("  every tape sews the same, and what the person does is the same", drawing[1]);
        Assert.Equal("  why: the file pond.svg changed", drawing[2]);
        await File.WriteAllTextAsync(recipe, text.Replace("width: 90", "width: 120", StringComparison.Ordinal));
        var wider = (await ToolRun.Run("check", recipe, "--out", At("old"))).Output.Split('\n');
        Assert.Equal(
            "  why: the recipe sails.yaml changed; the file pond.svg changed; the work is 120 x 120 mm, not 90 x 90 mm",
            wider[2]
        );
    }

    /// <summary>The manifests have no keys of the recipe, but they do have what the joins came to.</summary>
    [Fact]
    public async Task AnotherOverlapIsTold()
    {
        var recipe = await Make("old", CommandTests.Recipe, "--hoop", "small");
        await File.WriteAllTextAsync(
            recipe,
            CommandTests.Recipe.Replace("straight", "straight, width: 1.6 mm", StringComparison.Ordinal)
        );
        var ran = await ToolRun.Run("check", recipe, "--hoop", "small", "--out", At("old"));
        Assert.Contains(
            "why: the recipe sails.yaml changed; the overlap of parts is 1.6 mm (covers 1.92 mm), not 0.8 mm (covers 0.96 mm)",
            ran.Output,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task AnotherClothIsTold()
    {
        var recipe = await Make("old", CommandTests.Recipe, "--hoop", "large");
        await File.AppendAllTextAsync(recipe, "\ncloth: { color: \"#1d2b45\", thickness: 0.9 mm }\n");
        await ToolRun.Run("make", recipe, "--hoop", "large", "--out", At("new"));
        var ran = await ToolRun.Run("compare", At("old"), At("new"));
        Assert.Contains(
            "why: the recipe sails.yaml changed; the cloth's colour is #1d2b45, not #f4efe4; the cloth's thickness is 0.9 mm, "
                + "not 0.5 mm",
            ran.Output,
            StringComparison.Ordinal
        );
    }

    /// <summary>Tapes of the hoop that was struck still lie there, and nobody makes them again.</summary>
    [Fact]
    public async Task TheSetOfAHoopThatWasStruckIsWarnedOf()
    {
        var recipe = await Make("all", CommandTests.Recipe);
        string[] check = ["check", recipe, "--out", At("all"), "--hoop", "large"];
        Assert.Equal("", (await ToolRun.Run(check)).Error);
        var small = CommandTests
            .Recipe.Split('\n')
            .Single(line => line.Contains("name: small", StringComparison.Ordinal));
        await File.WriteAllTextAsync(recipe, CommandTests.Recipe.Replace(small, "", StringComparison.Ordinal));
        foreach (var ran in (Ran[])[await ToolRun.Run(["make", .. check[1..]]), await ToolRun.Run(check)])
        {
            Assert.Equal(0, ran.ExitCode);
            Assert.StartsWith(
                $"{At("all")}/small: warning SPL5060: holds tapes for hoop 'small', which sails.yaml has no more",
                ran.Error,
                StringComparison.Ordinal
            );
        }
        // Another recipe's set is none of its business.
        var other = At("other.yaml");
        File.Move(recipe, other);
        Directory.Delete(At("all", "large"), recursive: true);
        Assert.Equal("", (await ToolRun.Run("make", other, "--out", At("all"), "--hoop", "large")).Error);
    }

    /// <summary>A title is the tapes' label: nothing is to be sewn again for it.</summary>
    [Fact]
    public async Task AnotherTitleIsNoOtherStitch()
    {
        await Make("old", CommandTests.Recipe, "--hoop", "large");
        var other = CommandTests.Recipe.Replace("Two sails", "Evening", StringComparison.Ordinal);
        await File.WriteAllTextAsync(At("sails.yaml"), other);
        string[] check = ["check", At("sails.yaml"), "--hoop", "large", "--out", At("old")];
        var ran = await ToolRun.Run(check);
        Assert.Equal(1, ran.ExitCode);
        Assert.Contains("every tape sews the same, and what the person does is the same", ran.Output);
        Assert.Contains("why: the recipe sails.yaml changed; the title is 'Evening', not 'Two sails'", ran.Output);
        Assert.Contains("part-A.dst differs in its label alone", ran.Output);
        Assert.Equal(0, (await ToolRun.Run([.. check, "--stitches-only"])).ExitCode);
    }

    [Fact]
    public async Task AHoopThatOnlyOneSideHasIsNewOrGone()
    {
        await Make("old", CommandTests.Recipe, "--hoop", "large");
        await Make("new", CommandTests.Recipe);
        var more = await ToolRun.Run("compare", At("old"), At("new"));
        Assert.Equal(1, more.ExitCode);
        Assert.Contains("small/part-A.dst and .csv are new", more.Output, StringComparison.Ordinal);
        Assert.Contains("parts: new A B", more.Output, StringComparison.Ordinal);
        var fewer = await ToolRun.Run("compare", At("new"), At("old"));
        Assert.Contains("small/part-A.csv and .dst are gone", fewer.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task WhatIsNoSetIsRefused()
    {
        Directory.CreateDirectory(At("empty"));
        var ran = await ToolRun.Run("compare", At("empty"), At("nowhere"));
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains("error SPL9023", ran.Error, StringComparison.Ordinal);
    }

    /// <summary>The sums list the files: without them there is nothing that could be called the same.</summary>
    [Theory]
    [InlineData("large")]
    [InlineData("")]
    public async Task SetsWithoutTheirSumsAreRefused(string compared)
    {
        foreach (var side in (string[])["old", "new"])
        {
            await Make(side, CommandTests.Recipe);
            File.Delete(At(side, "large", "SHA256SUMS"));
        }
        var ran = await ToolRun.Run("compare", At("old", compared), At("new", compared));
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains("error SPL9023", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ASetAgainstAFolderOfSetsIsRefused()
    {
        await Make("old", CommandTests.Recipe);
        foreach (
            var (old, now) in (ValueTuple<string, string>[])
                [(At("old", "large"), At("old")), (At("old"), At("old", "large"))]
        )
        {
            var ran = await ToolRun.Run("compare", old, now);
            Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
            Assert.Contains("error SPL9023", ran.Error, StringComparison.Ordinal);
        }
    }

    /// <summary>Another program holds the tape, so that it cannot be read.</summary>
    [Theory]
    [InlineData("old")]
    [InlineData("new")]
    public async Task TheSideThatCannotBeReadIsNamed(string side)
    {
        await Make("old", CommandTests.Recipe, "--hoop", "large");
        await Make("new", CommandTests.Recipe, "--hoop", "large");
        var tape = At(side, "large", "part-A.dst");
        await using var held = new FileStream(tape, FileMode.Open, FileAccess.ReadWrite, FileShare.None);
        var ran = await ToolRun.Run("compare", At("old"), At("new"));
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.StartsWith($"{tape}: error SPL9010", ran.Error, StringComparison.Ordinal);
    }

    /// <summary>Says nothing where permissions bind nobody: for an administrator, and on Windows.</summary>
    [Fact]
    public async Task AFolderThatMayNotBeListedIsToldAndNoCrash()
    {
        if (OperatingSystem.IsWindows() || Environment.IsPrivilegedProcess)
            return;
        Directory.CreateDirectory(At("closed"), UnixFileMode.None);
        var ran = await ToolRun.Run("compare", At("closed"), At("nowhere"));
        Directory.Delete(At("closed"));
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.StartsWith($"{At("closed")}: error SPL9010", ran.Error, StringComparison.Ordinal);
    }

    /// <summary>Another program wrote the manifest: nobody need sew another stitch, and the check says so.</summary>
    [Fact]
    public async Task AnotherVersionIsNoOtherStitch()
    {
        var recipe = await Make("old", CommandTests.Recipe);
        foreach (var manifest in Directory.EnumerateFiles(At("old"), "manifest.json", SearchOption.AllDirectories))
            await File.WriteAllTextAsync(
                manifest,
                (await File.ReadAllTextAsync(manifest)).Replace(
                    "\"version\": \"",
                    "\"version\": \"0.0.",
                    StringComparison.Ordinal
                )
            );
        string[] call = ["check", recipe, "--out", At("old"), "--hoop", "large"];
        var ran = await ToolRun.Run(call);
        Assert.Equal(1, ran.ExitCode);
        Assert.Contains(
            "every tape sews the same, and what the person does is the same; only the manifest differs (made by Splitter 0.0.",
            ran.Output
        );
        Assert.Equal(0, (await ToolRun.Run([.. call, "--stitches-only"])).ExitCode);

        await File.AppendAllTextAsync(At("old", "large", "part-A.dst"), "x");
        Assert.Equal(1, (await ToolRun.Run([.. call, "--stitches-only"])).ExitCode);
    }

    [Fact]
    public async Task CheckNamesTheShapeAndWhereItIsDrawn()
    {
        var recipe = await Make("old", CommandTests.Recipe);
        await File.WriteAllTextAsync(recipe, Moved);
        var ran = await ToolRun.Run("check", recipe, "--out", At("old"), "--hoop", "large", "--format", "sarif");
        Assert.Equal((1, ""), (ran.ExitCode, ran.Error));
        AssertIsSarif(ran.Output);
        var results = JsonNode.Parse(ran.Output)!["runs"]![0]!["results"]!.AsArray();
        var mast = Assert.Single(
            results,
            r => r!["message"]!["text"]!.GetValue<string>().Contains("mast moved", StringComparison.Ordinal)
        )!;
        Assert.Equal("SPL5024", mast["ruleId"]!.GetValue<string>());
        // The set's hoop in the recipe, and the line that draws the mast.
        Assert.Equal(9, Line(mast["locations"]!));
        Assert.Equal(6, Line(mast["relatedLocations"]!));
        Assert.Contains(results, r => r!["level"]!.GetValue<string>() == "note");
    }

    [Fact]
    public async Task CompareAnswersProgramsToo()
    {
        await Make("old", CommandTests.Recipe);
        await Make("new", Moved);
        AssertIsSarif((await ToolRun.Run("compare", At("old"), At("new"), "--format", "sarif")).Output);
        var ran = await ToolRun.Run("compare", At("old"), At("new"), "--format", "json");
        var set = JsonNode.Parse(ran.Output)!["result"]![0]!;
        Assert.Equal("stitches", set["weight"]!.GetValue<string>());
        Assert.Equal("A", set["parts"]![0]!["letter"]!.GetValue<string>());
        Assert.InRange(set["parts"]![0]!["stitches_removed"]!.GetValue<int>(), 1, 1000);
    }

    /// <summary>The mast ends 20 mm higher.</summary>
    private static readonly string Moved = CommandTests.Recipe.Replace(
        "LINESTRING (104 4, 104 200)",
        "LINESTRING (104 4, 104 180)",
        StringComparison.Ordinal
    );

    private static int Line(JsonNode locations) =>
        locations[0]!["physicalLocation"]!["region"]!["startLine"]!.GetValue<int>();

    /// <summary>
    /// OASIS's schema of SARIF 2.1.0, as the npm package @microsoft/jest-sarif 1.0.0-beta.0 (MIT) carries it. It is in draft
    /// 04, which the validator does not read: of what differs in draft 06, it uses the word 'id' alone.
    /// </summary>
    private static void AssertIsSarif(string text)
    {
        var schema = JsonNode.Parse(File.ReadAllText(Golden.Source("Tool", "Sarif", "sarif-2.1.0-rtm.5.json")))!;
        schema["$schema"] = "http://json-schema.org/draft-07/schema#";
        schema.AsObject().Remove("id");
        var result = JsonSchema
            .FromText(schema.ToJsonString())
            .Evaluate(JsonNode.Parse(text), new() { OutputFormat = OutputFormat.List });
        Assert.True(
            result.IsValid,
            string.Join(
                '\n',
                result.Details.Where(d => d.HasErrors).Select(d => $"{d.InstanceLocation} {d.Errors!.First()}")
            )
        );
    }

    private async Task<string> Make(string folder, string recipe, params string[] options)
    {
        var file = At("sails.yaml");
        await File.WriteAllTextAsync(file, recipe);
        Assert.Equal(0, (await ToolRun.Run(["make", file, "--out", At(folder), .. options])).ExitCode);
        return file;
    }

    private string At(params string[] parts) => Path.Combine([root, .. parts]);
}
