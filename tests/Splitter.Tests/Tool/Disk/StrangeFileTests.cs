namespace Splitter.Tests.Tool.Disk;

/// <summary>
/// What a name may lead to that is no file: a pipe that nobody writes into, a device without an end, a link to itself. Each is
/// told with its name, and nothing waits for it.
/// </summary>
public sealed class StrangeFileTests : IDisposable
{
    /// <summary>Far more than any of these calls takes; only one that waits for a pipe is given up.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    private readonly string root = Directory.CreateTempSubdirectory("splitter-strange-").FullName;

    public void Dispose() => Directory.Delete(root, recursive: true);

    [SkippableTheory]
    [InlineData("plan", "pipe.yaml")]
    [InlineData("make", "pipe.yaml")]
    [InlineData("new", "pipe.svg")]
    [InlineData("inspect", "pipe.dst")]
    public async Task APipeInTheCallIsNamed(string command, string pipe)
    {
        await Pipe(pipe);
        AssertTold(await Run(command, At(pipe)), At(pipe), "a pipe or a device");
    }

    [SkippableTheory]
    [InlineData("art.svg", "pipe")]
    [InlineData("art.geojson", "pipe")]
    [InlineData("art.dst", "pipe")]
    [InlineData("art.svg", "/dev/zero")]
    [InlineData("art.dst", "/dev/zero")]
    [InlineData("art.svg", "/dev/stdin")]
    [InlineData("art.svg", "art.svg")]
    [InlineData("art.svg", "nowhere.svg")]
    public async Task ArtworkThatIsNoFileIsNamed(string name, string leadsTo)
    {
        Skip.If(OperatingSystem.IsWindows(), "pipes and devices have no names in a folder here");
        if (leadsTo == "pipe")
            await Pipe(name);
        else
            File.CreateSymbolicLink(At(name), leadsTo);
        var width = name.EndsWith(".dst", StringComparison.Ordinal) ? "" : ", width: 90 mm";
        AssertTold(await Run("make", Recipe($"{{ file: {name}{width} }}")), At("panel.yaml"), name);
        Assert.False(Directory.Exists(At("parts")));
    }

    [SkippableFact]
    public async Task AnIncludedPipeIsNamed()
    {
        await Pipe("hoops.yaml");
        var recipe = Recipe("{ shapes: [{ wkt: \"POLYGON ((0 0, 60 0, 30 40, 0 0))\", fill: \"#14304f\" }] }");
        await File.AppendAllTextAsync(recipe, "include: [hoops.yaml]\n");
        AssertTold(await Run("plan", recipe), recipe, "hoops.yaml");
    }

    [SkippableFact]
    public async Task APipeInPlaceOfMeasuredOffsetsIsNamed()
    {
        await Pipe("offsets.yaml");
        AssertTold(
            await Run("realign", Triangle(), "--offsets", At("offsets.yaml")),
            At("offsets.yaml"),
            "a pipe or a device"
        );
    }

    /// <summary>In a set, too, which may have come from anywhere.</summary>
    [SkippableTheory]
    [InlineData("manifest.json")]
    [InlineData("SHA256SUMS")]
    [InlineData("part-A.dst")]
    public async Task APipeInASetIsWaitedForByNoCommand(string name)
    {
        var recipe = Triangle();
        Assert.Equal(0, (await Run("make", recipe)).ExitCode);
        Assert.Equal(0, (await Run("make", recipe, "--out", At("good"))).ExitCode);
        File.Delete(At("parts", "small", name));
        await Pipe(At("parts", "small", name));

        Assert.Equal(1, (await Run("check", recipe)).ExitCode);
        Assert.InRange((await Run("compare", At("good"), At("parts"))).ExitCode, 1, 2);
        Assert.InRange((await Run("inspect", At("parts", "small", "part-A.dst"))).ExitCode, 0, 2);
        // Without its manifest nothing in the folder is known to be ours.
        Assert.Equal(name == "manifest.json" ? 2 : 0, (await Run("make", recipe)).ExitCode);
    }

    /// <summary>Reading through a link is the person's own choice; the drawing may lie in an archive of drawings.</summary>
    [SkippableFact]
    public async Task ALinkToADrawingIsFollowed()
    {
        Skip.If(OperatingSystem.IsWindows(), "links need a right that few have here");
        Directory.CreateDirectory(At("archive"));
        await File.WriteAllTextAsync(
            At("archive", "kite.svg"),
            "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 9 9'><path d='M0 0h9v9z' fill='#14304f'/></svg>"
        );
        File.CreateSymbolicLink(At("art.svg"), Path.Combine("archive", "kite.svg"));
        Assert.Equal(0, (await Run("make", Recipe("{ file: art.svg, width: 90 mm }"))).ExitCode);
    }

    /// <summary>A file that another program keeps for itself.</summary>
    [Fact]
    public async Task AManifestThatIsHeldLeavesTheOldSet()
    {
        var recipe = Triangle();
        Assert.Equal(0, (await Run("make", recipe)).ExitCode);
        var manifest = At("parts", "small", "manifest.json");
        await using (new FileStream(manifest, FileMode.Open, FileAccess.ReadWrite, FileShare.None))
            AssertTold(await Run("make", recipe), At("parts", "small"), "the old files are untouched");
        Assert.Equal(0, (await Run("check", recipe)).ExitCode);
    }

    private static void AssertTold(Ran ran, string place, string told)
    {
        Assert.True((ran.ExitCode, ran.Output) == (2, ""), ran.ToString());
        var line = Assert.Single(ran.Error.TrimEnd().Split('\n'));
        Assert.StartsWith(place, line, StringComparison.Ordinal);
        Assert.Contains(told, line, StringComparison.Ordinal);
    }

    private static Task<Ran> Run(params string[] call) => Task.Run(() => ToolRun.Run(call)).WaitAsync(Patience);

    private async Task Pipe(string name)
    {
        Skip.If(OperatingSystem.IsWindows(), "pipes have no names in a folder here");
        Assert.Equal(0, (await Processes.Run(root, null, "mkfifo", At(name))).ExitCode);
    }

    private string Triangle() =>
        Recipe("{ shapes: [{ wkt: \"POLYGON ((0 0, 60 0, 30 40, 0 0))\", fill: \"#14304f\" }] }");

    private string Recipe(string artwork)
    {
        File.WriteAllText(
            At("panel.yaml"),
            $$"""
            splitter: 1
            artwork: {{artwork}}
            threads: [{ name: night, color: "#14304f" }]
            hoops: [{ name: small, field: 130 x 180 mm }]
            output: { folder: parts, files: [tape] }

            """
        );
        return At("panel.yaml");
    }

    private string At(params string[] names) => Path.Combine([root, .. names]);
}
