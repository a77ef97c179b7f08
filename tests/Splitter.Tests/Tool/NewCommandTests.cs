using System.Text.Json;

namespace Splitter.Tests.Tool;

/// <summary>A recipe that is started for a drawing makes parts without another word.</summary>
public sealed class NewCommandTests : IDisposable
{
    /// <summary>A pennant: lettering, small stars in a group, rigging finer than a millimetre, two large areas.</summary>
    private const string Pennant = """
        <svg xmlns="http://www.w3.org/2000/svg" width="240mm" height="150mm" viewBox="0 0 240 150">
          <path id="cloud" fill="#2c6591" d="M10 10H230V70H10Z"/>
          <path id="hill" fill="#3f6f52" d="M10 70H230V140H10Z"/>
          <g id="stars" fill="#f3b548"><circle cx="40" cy="30" r="6"/><circle cx="70" cy="35" r="6"/></g>
          <g class="lettering" fill="#c23b2e"><path d="M100 90h4v30h-4Z"/><path d="M112 90h4v30h-4Z"/></g>
          <path id="rope" fill="none" stroke="#14304f" stroke-width=".6" d="M20 130L220 20"/>
        </svg>
        """;

    /// <summary>Drawn on a grid of 24, as icons are: nothing says how large it should be sewn.</summary>
    private const string Icon =
        "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 24 24'><path d='M2 12L12 2l10 10-10 10Z'/></svg>";

    private const string Islands = """
        {"type": "FeatureCollection", "features": [
          {"type": "Feature", "id": "east", "properties": {"fill": "#3f6f52"},
           "geometry": {"type": "Polygon", "coordinates": [[[0,0],[0.2,0],[0.2,0.3],[0,0.3],[0,0]]]}},
          {"type": "Feature", "id": "west", "properties": {"fill": "#6f9a58", "stroke": "#14304f"},
           "geometry": {"type": "Polygon", "coordinates": [[[0.3,0],[0.5,0],[0.5,0.3],[0.3,0.3],[0.3,0]]]}}]}
        """;

    private readonly string root = Directory.CreateTempSubdirectory("splitter-new-").FullName;

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Theory]
    [InlineData("pennant.svg", Pennant, "")]
    [InlineData("it's 50% \"off\" & odd #1.svg", Icon, "states no width that can be sewn; the recipe says 200 mm wide")]
    [InlineData("islands.geojson", Islands, "states no width that can be sewn; the recipe says 200 mm wide")]
    public async Task WhatIsStartedIsPlannedAndMade(string name, string drawing, string warned)
    {
        var artwork = Written(name.Replace("\"", "", StringComparison.Ordinal), drawing);
        var recipe = Path.ChangeExtension(artwork, ".yaml");
        var started = await ToolRun.Run("new", artwork);
        Assert.Equal(0, started.ExitCode);
        Assert.Contains(warned, started.Error, StringComparison.Ordinal);
        Assert.Equal(warned.Length > 0, started.Error.Contains("SPL2069", StringComparison.Ordinal));
        Assert.Equal((0, ""), Seen(await ToolRun.Run("plan", recipe)));
        var made = await ToolRun.Run("make", recipe, "--hoop", "large", "--format", "json");
        Assert.Equal((0, ""), Seen(made));
        using var answer = JsonDocument.Parse(made.Output);
        Assert.InRange(answer.RootElement.GetProperty("result")[0].GetProperty("parts").GetInt32(), 1, 3);
    }

    [Fact]
    public async Task RulesThreadsAndHoopsSuitTheDrawing()
    {
        var text = (await ToolRun.Run("new", Written("pennant.svg", Pennant), "-")).Output;
        Golden.Check(Golden.Source("Tool", "Started", "pennant.yaml"), text);
        Assert.False(File.Exists(At("pennant.yaml")));
    }

    /// <summary>A tape has no colours and needs no rules; the recipe says what it holds.</summary>
    [Fact]
    public async Task ATapeIsStartedPlannedAndMadeToo()
    {
        File.Copy(Golden.Source("Artwork", "Cases", "tape", "flag.dst"), At("flag.dst"));
        Assert.Equal((0, ""), Seen(await ToolRun.Run("new", At("flag.dst"))));
        Golden.Check(Golden.Source("Tool", "Started", "flag.yaml"), await File.ReadAllTextAsync(At("flag.yaml")));
        var planned = await ToolRun.Run("plan", At("flag.yaml"), "--hoop", "all");
        Assert.Equal((0, ""), Seen(planned));
        Assert.Contains("hoop large, field 200 x 300 mm", planned.Output, StringComparison.Ordinal);
        Assert.Equal((0, ""), Seen(await ToolRun.Run("make", At("flag.yaml"))));
        Assert.Equal((0, ""), Seen(await ToolRun.Run("check", At("flag.yaml"))));
    }

    [Theory]
    [InlineData("300mm", "300 mm")]
    [InlineData("12 in", "304.8 mm")]
    public async Task TheWidthIsThatOfTheCall(string given, string written)
    {
        var ran = await ToolRun.Run("new", Written("pennant.svg", Pennant), "-", "--width", given);
        Assert.Contains(
            $"  width: {written} # finished width; the height follows",
            ran.Output,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("300", "splitter: error SPL1032: the width 300 has no unit; write '300mm' if millimetres are meant\n")]
    [InlineData("wide", "splitter: error SPL1030: 'width' takes a length from 5 mm")]
    public async Task AWidthThatIsNoneIsRefused(string given, string told)
    {
        var ran = await ToolRun.Run("new", Written("pennant.svg", Pennant), "--width", given);
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.StartsWith(told, ran.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "the drawing states no unit, so each of its units is taken for 1/96 inch")]
    [InlineData("width=\"300\" height=\"300\"", "the drawing states no unit")]
    [InlineData("width=\"300mm\"", "as the drawing states it")]
    public async Task WhereAWidthComesFromIsTold(string size, string told)
    {
        var drawing =
            $"<svg xmlns=\"http://www.w3.org/2000/svg\" {size} viewBox=\"0 0 300 300\">"
            + "<rect width=\"300\" height=\"300\" fill=\"#14304f\"/></svg>";
        var ran = await ToolRun.Run("new", Written("pond.svg", drawing), "-");
        Assert.Contains(told, ran.Output, StringComparison.Ordinal);
    }

    /// <summary>Cloth, rules and threads suit other widths, too.</summary>
    [Theory]
    [InlineData("80 mm")]
    [InlineData("480 mm")]
    public async Task TheWidthCanBeChangedAfterwards(string width)
    {
        var artwork = Written("pennant.svg", Pennant);
        await ToolRun.Run("new", artwork);
        var recipe = Path.ChangeExtension(artwork, ".yaml");
        var started = await File.ReadAllTextAsync(recipe);
        await File.WriteAllTextAsync(
            recipe,
            started.Replace("width: 240 mm", $"width: {width}", StringComparison.Ordinal)
        );
        Assert.Equal((0, ""), Seen(await ToolRun.Run("plan", recipe, "--hoop", "large")));
    }

    [Fact]
    public async Task AColourOfWhatIsTooSmallYetHasAThread()
    {
        var speck = """<circle cx="5" cy="5" r=".1" fill="#d81e5b"/></svg>""";
        var drawing = Pennant.Replace("</svg>", speck, StringComparison.Ordinal);
        var ran = await ToolRun.Run("new", Written("pennant.svg", drawing), "-");
        Assert.Contains("color: \"#d81e5b\" }", ran.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task TheDrawingItselfIsNeverWrittenOver()
    {
        var artwork = Written("pennant.svg", Pennant);
        var ran = await ToolRun.Run("new", artwork, artwork, "--force");
        Assert.Equal((2, Pennant), (ran.ExitCode, File.ReadAllText(artwork)));
        Assert.Contains("error SPL9018: ", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ADrawingOfManyColoursIsStartedToo()
    {
        var shapes = Enumerable
            .Range(0, 600)
            .Select(i =>
                FormattableString.Invariant(
                    $"<path fill='#{0x100000 + (i * 256):x6}' d='M{i % 30 * 10} {i / 30 * 10}h8v8h-8Z'/>"
                )
            );
        var drawing =
            $"<svg xmlns='http://www.w3.org/2000/svg' width='300mm' height='200mm' viewBox='0 0 300 200'>{string.Concat(shapes)}</svg>";
        var ran = await ToolRun.Run("new", Written("many.svg", drawing), "-");
        Assert.Equal(0, ran.ExitCode);
    }

    [Fact]
    public async Task ADrawingWithoutASizeGetsOneAndTheCommentSaysSo() =>
        Assert.Contains(
            "  width: 200 mm # finished width: the drawing states none",
            (await ToolRun.Run("new", Written("icon.svg", Icon), "-")).Output,
            StringComparison.Ordinal
        );

    [Fact]
    public async Task NothingIsOverwrittenUnlessItIsAskedFor()
    {
        var artwork = Written("icon.svg", Icon);
        var recipe = Written("icon.yaml", "mine");
        var refused = await ToolRun.Run("new", artwork);
        Assert.Equal((2, ""), (refused.ExitCode, refused.Output));
        Assert.StartsWith($"{recipe}: error SPL9021: is there already", refused.Error, StringComparison.Ordinal);
        Assert.Equal("mine", await File.ReadAllTextAsync(recipe));
        Assert.Equal(0, (await ToolRun.Run("new", artwork, "--force")).ExitCode);
        Assert.StartsWith("# icon: started", await File.ReadAllTextAsync(recipe), StringComparison.Ordinal);
    }

    /// <summary>A folder of the recipe's name is in its way.</summary>
    [Fact]
    public async Task ARecipeThatCannotBeWrittenLeavesNothingBehind()
    {
        var artwork = Written("icon.svg", Icon);
        Directory.CreateDirectory(At("icon.yaml"));
        var ran = await ToolRun.Run("new", artwork, "--force");
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.StartsWith($"{At("icon.yaml")}: error SPL9", ran.Error, StringComparison.Ordinal);
        Assert.Equal(
            ["icon.svg", "icon.yaml"],
            Directory.EnumerateFileSystemEntries(root).Select(Path.GetFileName).Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public async Task TheDrawingIsNamedFromWhereTheRecipeStands()
    {
        Directory.CreateDirectory(At("art"));
        var artwork = Written("art/icon.svg", Icon);
        Assert.Equal(0, (await ToolRun.Run("new", artwork, At("recipes", "sign.yaml"))).ExitCode);
        var text = await File.ReadAllTextAsync(At("recipes", "sign.yaml"));
        Assert.Contains("file: \"../art/icon.svg\"", text, StringComparison.Ordinal);
        Assert.Contains("folder: \"parts/sign\"", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("none.svg", null, "SPL9010")]
    [InlineData("broken.svg", "<svg", "SPL2")]
    [InlineData("photo.png", "PNG", "SPL1045")]
    [InlineData("empty.svg", "<svg xmlns='http://www.w3.org/2000/svg' width='90' height='90'/>", "SPL2")]
    public async Task WhatIsNoDrawingIsRefused(string name, string? drawing, string code)
    {
        var artwork = drawing is null ? At(name) : Written(name, drawing);
        var ran = await ToolRun.Run("new", artwork);
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.StartsWith(artwork, ran.Error, StringComparison.Ordinal);
        Assert.Contains($"error {code}", ran.Error, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFiles(root, "*.yaml"));
    }

    private static (int, string) Seen(Ran ran) =>
        (ran.ExitCode, string.Join('\n', ran.Error.Split('\n').Where(line => line.Contains(": error "))));

    private string At(params string[] parts) => Path.Combine([root, .. parts]);

    private string Written(string name, string text)
    {
        File.WriteAllText(At(name), text);
        return At(name);
    }
}
