namespace Splitter.Tests.Tool;

/// <summary>What <c>plan</c> says below its tables.</summary>
public sealed class PlanTextTests : IDisposable
{
    private const string Stiff = "The cloth is taken as not giving";

    /// <summary>Two fields share 13 mm all along their height of 174 mm.</summary>
    private const string Strip = """
        splitter: 1
        artwork: { shapes: [{ wkt: "POLYGON ((0 0, 230 0, 230 160, 0 160, 0 0))", fill: "#14304f" }] }
        hoops: [{ name: small, field: 130 x 180 mm }]
        fields: { place: [{ center: [60 mm, 80 mm] }, { center: [171 mm, 80 mm] }] }
        overlap: { seams: straight }
        registration: { corners: { count: 3 } }
        """;

    private readonly string root = Directory.CreateTempSubdirectory("splitter-plan-").FullName;

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Fact]
    public async Task ItIsSaidOnceThatTheClothIsTakenAsNotGiving()
    {
        Assert.Equal(2, (await Planned(CommandTests.Recipe)).Split(Stiff).Length);
        var soft = $"{CommandTests.Recipe}\ncloth: {{ stretch: {{ weft: 0.4 % }} }}\n";
        Assert.DoesNotContain(Stiff, await Planned(soft), StringComparison.Ordinal);
    }

    [Fact]
    public async Task CornersOnAStripAreSaidToLieInALine()
    {
        var lines = (await Planned(Strip)).Split('\n');
        var row = lines.SkipWhile(line => !line.StartsWith("part  apart", StringComparison.Ordinal)).ElementAt(1);
        Assert.EndsWith(
            "the ground they share is a strip with room for a line of corners only",
            row,
            StringComparison.Ordinal
        );
    }

    private async Task<string> Planned(string recipe)
    {
        var file = Path.Combine(root, "sails.yaml");
        await File.WriteAllTextAsync(file, recipe);
        var ran = await ToolRun.Run("plan", file);
        Assert.Equal(0, ran.ExitCode);
        return ran.Output;
    }
}
