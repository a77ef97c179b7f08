using System.Text.Json;
using Splitter.Tool.Disk;

namespace Splitter.Tests.Tool;

/// <summary>What the commands do with a small work for two hoops.</summary>
public sealed class CommandTests : IDisposable
{
    internal const string Recipe = """
        splitter: 1
        title: Two sails
        artwork:
          shapes:
            - { wkt: "POLYGON ((10 190, 100 10, 100 190, 10 190))", id: mainsail, fill: "#14304f" }
            - { wkt: "LINESTRING (104 4, 104 200)", id: mast, stroke: "#76584a", stroke-width: 0.4 mm }
        hoops:
          - { name: small, field: 130 x 180 mm }
          - { name: large, field: 200 x 300 mm }
        overlap: { seams: straight }
        output: { folder: parts, files: [tape, csv] }
        """;

    private readonly string root = Directory.CreateTempSubdirectory("splitter-commands-").FullName;

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Fact]
    public async Task MakeWritesASetForEveryHoopAndTellsItsFigures()
    {
        var ran = await ToolRun.Run("make", Written("sails.yaml", Recipe));
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        var lines = ran.Output.TrimEnd().Split('\n');
        Assert.Equal(3, lines.Length);
        Assert.All(
            ["hoop", "parts", "stitches", "trims", "stops", "minutes", "worst error, 95 %", "folder"],
            head => Assert.Contains(head, lines[0], StringComparison.Ordinal)
        );
        Assert.Contains("small", lines[1], StringComparison.Ordinal);
        Assert.Contains("no joins", lines[2], StringComparison.Ordinal);
        Assert.Equal(["large", "small"], Names("parts"));
        Assert.Equal(["SHA256SUMS", "manifest.json", "part-A.csv", "part-A.dst"], Names("parts", "large"));
    }

    [Fact]
    public async Task OneHoopAndAnotherFolder()
    {
        var ran = await ToolRun.Run("make", Written("sails.yaml", Recipe), "--hoop", "large", "--out", At("elsewhere"));
        Assert.Equal(0, ran.ExitCode);
        Assert.Equal(["large"], Names("elsewhere"));
        Assert.False(Directory.Exists(At("parts")));
        var check = await ToolRun.Run("check", At("sails.yaml"), "--hoop", "large", "--out", At("elsewhere"));
        Assert.Equal((0, ""), (check.ExitCode, check.Error));
    }

    [Fact]
    public async Task MakeAnswersAProgramWithTheFiguresOfTheManifest()
    {
        var ran = await ToolRun.Run("make", Written("sails.yaml", Recipe), "--format", "json");
        using var answer = JsonDocument.Parse(ran.Output);
        Assert.Equal(0, answer.RootElement.GetProperty("exit_code").GetInt32());
        foreach (var set in answer.RootElement.GetProperty("result").EnumerateArray())
        {
            var hoop = set.GetProperty("hoop").GetString()!;
            using var manifest = JsonDocument.Parse(await File.ReadAllTextAsync(At("parts", hoop, "manifest.json")));
            var parts = manifest.RootElement.GetProperty("parts").EnumerateArray().ToArray();
            Assert.Equal(parts.Length, set.GetProperty("parts").GetInt32());
            Assert.Equal(parts.Sum(p => p.GetProperty("stitches").GetInt32()), set.GetProperty("stitches").GetInt32());
            Assert.Equal(
                Names("parts", hoop),
                set.GetProperty("files").EnumerateArray().Select(f => f.GetString()!).Order(StringComparer.Ordinal)
            );
        }
    }

    [Fact]
    public async Task CheckFindsWhatIsMissingChangedAndTooMuch()
    {
        var recipe = Written("sails.yaml", Recipe);
        Assert.Equal(1, (await ToolRun.Run("check", recipe)).ExitCode);
        Assert.False(Directory.Exists(At("parts")));

        _ = await ToolRun.Run("make", recipe);
        Assert.Equal(0, (await ToolRun.Run("check", recipe)).ExitCode);

        File.Delete(At("parts", "large", "part-A.csv"));
        var missing = await ToolRun.Run("check", recipe);
        Assert.Equal(1, missing.ExitCode);
        Assert.Contains("large/part-A.csv is missing", missing.Output, StringComparison.Ordinal);

        _ = await ToolRun.Run("make", recipe);
        await File.AppendAllTextAsync(At("parts", "small", "part-B.dst"), "x");
        var changed = await ToolRun.Run("check", recipe, "--format", "json");
        Assert.Equal(1, changed.ExitCode);
        using var answer = JsonDocument.Parse(changed.Output);
        var small = answer.RootElement.GetProperty("result")[0];
        Assert.False(small.GetProperty("same").GetBoolean());
        Assert.Equal("small/part-B.dst", small.GetProperty("different")[0].GetProperty("path").GetString());
    }

    /// <summary>What a recipe includes is as much of its input as the recipe itself.</summary>
    [Fact]
    public async Task IncludedFilesAreInputsOfASet()
    {
        Directory.CreateDirectory(At("house"));
        var hoop = "  - { name: large, field: 200 x 300 mm }\n";
        await File.WriteAllTextAsync(At("house", "hoops.yaml"), "hoops:\n" + hoop);
        await File.WriteAllTextAsync(At("house", "all.yaml"), "include: [hoops.yaml]\noutput: { files: [tape] }\n");
        var recipe = Written(
            "sails.yaml",
            Recipe[..Recipe.IndexOf("hoops:", StringComparison.Ordinal)] + "include: [house/all.yaml]\n"
        );
        Assert.Equal(0, (await ToolRun.Run("make", recipe)).ExitCode);
        using var manifest = JsonDocument.Parse(
            await File.ReadAllTextAsync(At("parts", "sails", "large", "manifest.json"))
        );
        Assert.Equal(
            ["house/all.yaml", "house/hoops.yaml"],
            manifest.RootElement.GetProperty("inputs").EnumerateArray().Select(i => i.GetProperty("file").GetString()!)
        );
        Assert.Equal(0, (await ToolRun.Run("check", recipe)).ExitCode);

        await File.AppendAllTextAsync(At("house", "hoops.yaml"), "# Both of them.\n");
        Assert.Equal(1, (await ToolRun.Run("check", recipe)).ExitCode);
        await File.AppendAllTextAsync(At("house", "hoops.yaml"), hoop);
        var wrong = await ToolRun.Run("check", recipe);
        Assert.Equal((2, ""), (wrong.ExitCode, wrong.Output));
        Assert.StartsWith($"{At("house", "hoops.yaml")}(4,13): error SPL1041", wrong.Error, StringComparison.Ordinal);
    }

    /// <summary>An output that does not belong any more goes with the next make; what is the person's stays.</summary>
    [Fact]
    public async Task AnOutputThatIsNotAskedForAnyMoreGoes()
    {
        _ = await ToolRun.Run("make", Written("sails.yaml", Recipe));
        await File.WriteAllTextAsync(At("parts", "large", "notes.txt"), "mine");
        Written("sails.yaml", Recipe.Replace("[tape, csv]", "[tape]", StringComparison.Ordinal));
        var check = await ToolRun.Run("check", At("sails.yaml"), "--hoop", "large");
        Assert.Equal(1, check.ExitCode);
        Assert.Contains("part-A.csv", check.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("notes.txt", check.Output, StringComparison.Ordinal);
        Assert.Equal(0, (await ToolRun.Run("make", At("sails.yaml"))).ExitCode);
        Assert.Equal(["SHA256SUMS", "manifest.json", "notes.txt", "part-A.dst"], Names("parts", "large"));
    }

    [Fact]
    public async Task ErrorsInOneRecipeKeepAllOthersFromBeingWritten()
    {
        var good = Written("good.yaml", Recipe);
        var bad = Written("bad.yaml", Recipe.Replace("parts", "other", StringComparison.Ordinal) + "\nwrong: 1\n");
        var ran = await ToolRun.Run("make", good, bad);
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Equal(["bad.yaml", "good.yaml"], Names());
    }

    /// <summary>The first one's parts may be half sewn by then.</summary>
    [Fact]
    public async Task ACopyOfARecipeDoesNotReplaceThePartsOfTheFirst()
    {
        _ = await ToolRun.Run("make", Written("sails.yaml", Recipe));
        var before = await File.ReadAllTextAsync(At("parts", "large", "SHA256SUMS"));
        var ran = await ToolRun.Run(
            "make",
            Written("trial.yaml", Recipe.Replace("Two sails", "Trial", StringComparison.Ordinal))
        );
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains(
            "SPL5059: holds the parts of another recipe, sails.yaml, which may be half sewn",
            ran.Error,
            StringComparison.Ordinal
        );
        Assert.Equal(before, await File.ReadAllTextAsync(At("parts", "large", "SHA256SUMS")));
        var check = await ToolRun.Run("check", At("trial.yaml"));
        Assert.Contains("why: the recipe is trial.yaml, not sails.yaml", check.Output, StringComparison.Ordinal);
    }

    /// <summary>
    /// Two of one name that are written to one place, one after the other. Whoever moves a recipe, or all of it, goes on
    /// with the same parts.
    /// </summary>
    [Fact]
    public async Task ARecipeOfTheSameNameElsewhereDoesNotReplaceThePartsOfTheFirst()
    {
        foreach (var folder in new[] { "kites", "boats" })
            Directory.CreateDirectory(At(folder));
        var kite = Written("kites/sails.yaml", Recipe);
        var boat = Written("boats/sails.yaml", Recipe.Replace("Two sails", "Boat", StringComparison.Ordinal));
        Assert.Equal(0, (await ToolRun.Run("make", kite, "--out", At("made"))).ExitCode);
        Assert.Equal("../../kites/sails.yaml\n", await File.ReadAllTextAsync(At("made", "small", RecipeMark.Name)));
        var refused = await ToolRun.Run("make", boat, "--out", At("made"));
        Assert.Equal((2, ""), (refused.ExitCode, refused.Output));
        Assert.Contains(
            $"SPL5059: holds the parts of another recipe, {kite}, which",
            refused.Error,
            StringComparison.Ordinal
        );
        Assert.Contains($"give {boat} an 'output.folder'", refused.Error, StringComparison.Ordinal);
        Assert.Equal(0, (await ToolRun.Run("check", kite, "--out", At("made"))).ExitCode);
        Assert.Equal(0, (await ToolRun.Run("make", kite, "--out", At("made"))).ExitCode);

        Directory.CreateDirectory(At("shop"));
        Directory.Move(At("kites"), At("shop", "kites"));
        Directory.Move(At("made"), At("shop", "made"));
        Assert.Equal(
            0,
            (await ToolRun.Run("make", At("shop", "kites", "sails.yaml"), "--out", At("shop", "made"))).ExitCode
        );
        Directory.Move(At("shop", "kites"), At("shop", "dragons"));
        Assert.Equal(
            0,
            (await ToolRun.Run("make", At("shop", "dragons", "sails.yaml"), "--out", At("shop", "made"))).ExitCode
        );
    }

    [Fact]
    public async Task TwoRecipesDoNotShareAFolder()
    {
        var ran = await ToolRun.Run("make", Written("one.yaml", Recipe), Written("two.yaml", Recipe));
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains("SPL5055", ran.Error, StringComparison.Ordinal);
        Assert.Equal(["one.yaml", "two.yaml"], Names());
    }

    [Fact]
    public async Task ALinkOnTheRecipesWayIsNotFollowedButThePersonsOwnIs()
    {
        Directory.CreateDirectory(At("far"));
        Directory.CreateSymbolicLink(At("parts"), At("far"));
        var ran = await ToolRun.Run("make", Written("sails.yaml", Recipe), "--hoop", "large");
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains("SPL5053", ran.Error, StringComparison.Ordinal);
        Assert.Empty(Names("far"));
        Assert.Equal(
            0,
            (await ToolRun.Run("make", At("sails.yaml"), "--hoop", "large", "--out", At("parts"))).ExitCode
        );
        Assert.Equal(["large"], Names("far"));
    }

    [Fact]
    public async Task AFileWhereTheFolderShouldBe()
    {
        await File.WriteAllTextAsync(At("parts"), "mine");
        var ran = await ToolRun.Run("make", Written("sails.yaml", Recipe));
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains("error SPL5050", ran.Error, StringComparison.Ordinal);
        Assert.Equal("mine", await File.ReadAllTextAsync(At("parts")));
    }

    [Fact]
    public async Task PlanShowsFieldsAndJoinsAndDrawsThem()
    {
        var recipe = Written("sails.yaml", Recipe);
        var ran = await ToolRun.Run("plan", recipe, "--hoop", "small", "--picture", At("plan.svg"));
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.Matches("(?m)^B .* A  +A1 A2", ran.Output);
        Assert.Matches("(?m)^A-B( +[0-9.]+){8} +=+ *[|]", ran.Output);
        Assert.StartsWith("<svg", await File.ReadAllTextAsync(At("plan.svg")), StringComparison.Ordinal);
        Assert.Equal(["plan.svg", "sails.yaml"], Names());

        _ = await ToolRun.Run("plan", recipe, "--picture", At("plans"));
        Assert.Equal(["large.png", "large.svg", "small.png", "small.svg"], Names("plans"));

        var both = await ToolRun.Run("plan", recipe, "--picture", At("both.png"));
        Assert.Equal((2, ""), (both.ExitCode, both.Output));
        Assert.Contains("SPL9013", both.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task PlanComparesTheHoopsOfARecipe()
    {
        var ran = await ToolRun.Run("plan", Written("sails.yaml", Recipe), "--hoop", "all");
        Assert.Equal(ran.Output, (await ToolRun.Run("plan", At("sails.yaml"))).Output);
        Assert.StartsWith("hoop ", ran.Output, StringComparison.Ordinal);
        Assert.Matches("(?m)^hoop +small +large$", ran.Output);
        Assert.Matches("(?m)^field +130 x 180 mm +200 x 300 mm$", ran.Output);
        Assert.Matches(@"(?m)^hoopings +\d+ \(proven\) +1 \(proven\)$", ran.Output);
        Assert.Matches("(?m)^stitches, about +[0-9]+ +[0-9]+$", ran.Output);
    }

    /// <summary>Nobody has shown that there is no better plan without them.</summary>
    [Fact]
    public async Task PlanSaysThatItsBoundTakesFixedFieldsForGranted()
    {
        const string Fixed = """
            splitter: 1
            artwork:
              shapes:
                - { wkt: "POLYGON ((0 0, 230 0, 230 160, 0 160, 0 0))", id: band, fill: "#336699" }
            hoops:
              - { name: small, field: 130 x 180 mm }
            fields:
              fixed:
                - { center: [115 mm, 80 mm] }

            """;
        var ran = await ToolRun.Run("plan", Written("fixed.yaml", Fixed));
        Assert.Matches(@"(?m)^hoopings +3 \(proven, with what is fixed\)$", ran.Output);
    }

    /// <summary>The table's figures, keys in the described order, at most three decimals; and nothing but errors when there are some.</summary>
    [Fact]
    public async Task PlanAnswersAProgramWithTheSameFacts()
    {
        var recipe = Written("sails.yaml", Recipe);
        var ran = await ToolRun.Run("plan", recipe, "--format", "json");
        using var answer = JsonDocument.Parse(ran.Output);
        var result = answer.RootElement.GetProperty("result");
        Assert.Equal("plan recipe title width_mm height_mm hoops", Keys(result));
        var small = result.GetProperty("hoops")[0];
        Assert.Equal("hoop width_mm height_mm totals seam_mm parts corners joins", Keys(small));
        Assert.Equal(
            "parts lower_bound proven fixed turned cut_shapes seam_cost straight_seam_cost worst_error_95_mm worst_between joins_not_covered stops estimated_stitches estimated_minutes hooping_minutes",
            Keys(small.GetProperty("totals"))
        );
        Assert.Equal(
            "between worst_at_mm predicted_error_mm budget error_95_mm along_seam_mm at_junctions_mm junction overlap_mm covers_mm covered",
            Keys(small.GetProperty("joins")[0])
        );
        Assert.Equal(
            small.GetProperty("parts").EnumerateArray().Sum(part => part.GetProperty("stops").GetInt32()),
            small.GetProperty("totals").GetProperty("stops").GetInt32()
        );
        Assert.DoesNotMatch(@"\d\.\d{4}", ran.Output);

        var wrong = await ToolRun.Run("plan", recipe, "--hoop", "none", "--format", "json");
        Assert.Equal((2, ""), (wrong.ExitCode, wrong.Output));
    }

    /// <summary>make and plan speak of one error in the same words, and README's keys are those of the answer.</summary>
    [Fact]
    public async Task MakeTellsTheErrorThatPlanTells()
    {
        var recipe = Written("sails.yaml", Recipe);
        var plan = await ToolRun.Run("plan", recipe, "--hoop", "small", "--format", "json");
        var make = await ToolRun.Run("make", recipe, "--hoop", "small", "--format", "json");
        using var planned = JsonDocument.Parse(plan.Output);
        using var made = JsonDocument.Parse(make.Output);
        Assert.Equal("exit_code result diagnostics", Keys(made.RootElement));
        var set = made.RootElement.GetProperty("result")[0];
        Assert.Equal("recipe hoop parts stitches trims stops minutes worst_error_95_mm folder files", Keys(set));
        Assert.Equal(
            planned
                .RootElement.GetProperty("result")
                .GetProperty("hoops")[0]
                .GetProperty("totals")
                .GetProperty("worst_error_95_mm")
                .GetDouble(),
            set.GetProperty("worst_error_95_mm").GetDouble()
        );
        var text = await ToolRun.Run("make", recipe, "--hoop", "small");
        Assert.Contains("worst error, 95 %", text.Output, StringComparison.Ordinal);
    }

    private static string Keys(JsonElement element) =>
        string.Join(' ', element.EnumerateObject().Select(property => property.Name));

    [Fact]
    public async Task InspectTellsWhatTheManifestTells()
    {
        _ = await ToolRun.Run("make", Written("sails.yaml", Recipe), "--hoop", "large");
        var tape = At("parts", "large", "part-A.dst");
        var ran = await ToolRun.Run("inspect", tape, "--format", "json", "--picture", At("a.png"));
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        using var answer = JsonDocument.Parse(ran.Output);
        using var manifest = JsonDocument.Parse(await File.ReadAllTextAsync(At("parts", "large", "manifest.json")));
        var (held, part) = (answer.RootElement.GetProperty("result"), manifest.RootElement.GetProperty("parts")[0]);
        foreach (var figure in new[] { "stitches", "jumps", "trims", "stops" })
            Assert.Equal(part.GetProperty(figure).GetInt32(), held.GetProperty(figure).GetInt32());
        // ISO/IEC 15948: the eight bytes with which a PNG begins.
        Assert.Equal("89504E470D0A1A0A", Convert.ToHexString((await File.ReadAllBytesAsync(At("a.png")))[..8]));

        var text = await ToolRun.Run("inspect", tape);
        Assert.All(
            [
                "longest stitch",
                "thread on the cloth",
                "layers on a mm², most",
                "layers, 99 % of mm²",
                "penetrations of a mm²",
            ],
            what => Assert.Contains(what, text.Output, StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task InspectDrawsATapeInEveryWay()
    {
        _ = await ToolRun.Run("make", Written("sails.yaml", Recipe), "--hoop", "small");
        var tape = At("parts", "small", "part-A.dst");
        var all = await ToolRun.Run("inspect", tape, "--picture", At("pictures"));
        Assert.Equal((0, ""), (all.ExitCode, all.Error));
        Assert.Equal(
            ["density", "penetrations", "thread"],
            Names("pictures").Where(n => n.EndsWith(".svg", StringComparison.Ordinal)).Select(n => n[7..^4])
        );
        Assert.Equal(6, Names("pictures").Length);
        var one = await ToolRun.Run("inspect", tape, "--as", "density", "--picture", At("one.svg"));
        Assert.Equal((0, ""), (one.ExitCode, one.Error));
        Assert.Equal(File.ReadAllText(At("pictures", "part-A-density.svg")), File.ReadAllText(At("one.svg")));
        // The manifest beside the tape knows the colour of the mainsail.
        Assert.Contains(
            "colours of the manifest",
            File.ReadAllText(At("pictures", "part-A-thread.svg")),
            StringComparison.Ordinal
        );
        Directory.CreateDirectory(At("alone"));
        File.Copy(tape, At("alone", "part-A.dst"));
        _ = await ToolRun.Run("inspect", At("alone", "part-A.dst"), "--picture", At("alone.svg"));
        Assert.Contains("colours not the threads", File.ReadAllText(At("alone.svg")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task InspectSaysWhatIsWrong()
    {
        _ = await ToolRun.Run("make", Written("sails.yaml", Recipe), "--hoop", "large");
        var tape = At("parts", "large", "part-A.dst");
        await Wrong("SPL9015", "splitter", tape, "--as", "thread");
        await Wrong("SPL9001", "splitter", tape, "--picture", At("a.svg"), "--as", "fog");
        await Wrong("SPL9012", At("a.gif"), tape, "--picture", At("a.gif"));
        await Wrong("SPL9014", At("none", "a.png"), tape, "--picture", At("none", "a.png"));
        await Wrong("SPL9010", At("none.dst"), At("none.dst"));
        await Wrong("SPL9010", At("parts"), At("parts"));
        await Wrong("SPL5001", At("sails.yaml"), At("sails.yaml"));
        await File.WriteAllBytesAsync(tape, (await File.ReadAllBytesAsync(tape))[..600]);
        await Wrong("SPL5002", $"{tape}(1,29)", tape);
        await File.WriteAllTextAsync(tape, new string('x', 2000));
        await Wrong("SPL5003", $"{tape}(1,1)", tape);

        static async Task Wrong(string code, string place, params string[] call)
        {
            var ran = await ToolRun.Run(["inspect", .. call]);
            Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
            Assert.StartsWith($"{place}: error {code}: ", ran.Error, StringComparison.Ordinal);
            Assert.Single(ran.Error.TrimEnd().Split('\n'));
        }
    }

    private string At(params string[] parts) => Path.Combine([root, .. parts]);

    private string Written(string name, string text)
    {
        File.WriteAllText(At(name), text);
        return At(name);
    }

    /// <summary>Of what lies in a folder, but for the mark of the recipe.</summary>
    private string[] Names(params string[] folder) =>
        [
            .. Directory
                .EnumerateFileSystemEntries(At(folder))
                .Select(path => Path.GetFileName(path)!)
                .Where(name => name != RecipeMark.Name)
                .Order(StringComparer.Ordinal),
        ];
}
