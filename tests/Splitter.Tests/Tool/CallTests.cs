namespace Splitter.Tests.Tool;

/// <summary>Calls that are wrong, and what a person and a program are told.</summary>
public sealed class CallTests : IDisposable
{
    private readonly string root = Directory.CreateTempSubdirectory("splitter-call-").FullName;

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Theory]
    [InlineData("", "command")]
    [InlineData("mak bay.yaml", "'mak'")]
    [InlineData("make", "'RECIPE'")]
    [InlineData("make bay.yaml --jobs 0", "'0'")]
    [InlineData("make bay.yaml --jobs 1.5", "'1.5'")]
    [InlineData("make bay.yaml --jobs many", "'many'")]
    [InlineData("make bay.yaml --format xml", "'xml'")]
    [InlineData("make bay.yaml --colour", "'--colour'")]
    [InlineData("plan a.yaml b.yaml", "'b.yaml'")]
    [InlineData("mend old new", "'mend'")]
    [InlineData("make bay.yaml --format sarif", "'sarif'")]
    public async Task ACallThatIsNotUnderstoodIsToldSo(string call, string names)
    {
        var ran = await ToolRun.Run(call.Split(' ', StringSplitOptions.RemoveEmptyEntries));
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.All(
            ran.Error.TrimEnd().Split('\n'),
            line => Assert.StartsWith("splitter: error SPL9001: ", line, StringComparison.Ordinal)
        );
        Assert.Contains(names, ran.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--help", "splitter make recipes/lighthouse-bay.yaml")]
    [InlineData("make --help", "--out /tmp/bay")]
    [InlineData("plan --help", "--picture")]
    [InlineData("--help", "70  a defect")]
    public async Task HelpShowsExamplesAndExitCodes(string call, string text)
    {
        var ran = await ToolRun.Run(call.Split(' '));
        Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
        Assert.Contains(text, ran.Output, StringComparison.Ordinal);
    }

    /// <summary>Help names what a command takes, and not the files of the folder that one is in.</summary>
    [Theory]
    [InlineData("make", "<RECIPE>")]
    [InlineData("realign", "<RECIPE>")]
    [InlineData("new", "<ARTWORK>")]
    [InlineData("compare", "<OLD>")]
    [InlineData("inspect", "<FILE>")]
    public async Task HelpNamesWhatACommandTakes(string command, string named)
    {
        var ran = await ToolRun.Run(command, "--help");
        var arguments = ran.Output[ran.Output.IndexOf("Arguments:", StringComparison.Ordinal)..];
        Assert.Contains($"  {named}", arguments, StringComparison.Ordinal);
        Assert.DoesNotContain("/|", (await ToolRun.Run("--help")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ARecipeThatCannotBeReadIsNamed()
    {
        var nowhere = Path.Combine(root, "nowhere.yaml");
        Assert.Equal(
            (2, "", $"{nowhere}: error SPL9010: the file does not exist; give the path of a file that can be read\n"),
            Told(await ToolRun.Run("make", nowhere))
        );
        Assert.Equal(
            (2, "", $"{root}: error SPL9010: the file is a folder; give the path of a file that can be read\n"),
            Told(await ToolRun.Run("plan", root))
        );
    }

    [Fact]
    public async Task ArtworkThatIsNotThereIsNamedFromWhereThePersonIs()
    {
        var recipe = Recipe(
            "bay.yaml",
            """
            splitter: 1
            artwork: { file: art/bay.svg, width: 100 mm }
            hoops: [{ name: small, field: 130 x 180 mm }]
            """
        );
        var ran = await ToolRun.Run("plan", recipe);
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains("art/bay.svg", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ARecipeIsNamedOnce()
    {
        var recipe = Recipe("bay.yaml", "splitter: 1\n");
        var ran = await ToolRun.Run("make", recipe, Path.Combine(root, ".", "bay.yaml"));
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains("SPL9011", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task MistakesOfAllRecipesAreToldTogetherInOrder()
    {
        var b = Recipe("b.yaml", "splitter: 1\nartwork: { width: 3 }\nhoop: x\n");
        var a = Recipe("a.yaml", "splitter: 2\n");
        var ran = await ToolRun.Run("make", b, a);
        var places = ran
            .Error.TrimEnd()
            .Split('\n')
            .Select(line => line[..line.IndexOf(": ", StringComparison.Ordinal)]);
        Assert.Equal(2, ran.ExitCode);
        Assert.StartsWith($"{a}(1,", places.First(), StringComparison.Ordinal);
        Assert.Contains(places, place => place.StartsWith($"{b}(3,", StringComparison.Ordinal));
    }

    [Fact]
    public async Task APictureHasAKind()
    {
        var recipe = Recipe("bay.yaml", "splitter: 1\n");
        var ran = await ToolRun.Run("plan", recipe, "--picture", Path.Combine(root, "plan.jpg"));
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Contains("SPL9012", ran.Error, StringComparison.Ordinal);
    }

    /// <summary>README: with errors standard output stays empty, and each line of standard error has its place and code.</summary>
    [Theory]
    [InlineData("make")]
    [InlineData("plan")]
    [InlineData("check")]
    [InlineData("inspect")]
    public async Task AProgramGetsNoAnswerWhereThereAreErrors(string command)
    {
        var recipe = Recipe("bay.yaml", "splitter: 1\nhoop: x\n");
        var ran = await ToolRun.Run(command, recipe, "--format", "json");
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.Matches(@"^(\S+: error SPL\d{4}: .+\n)+$", ran.Error);
    }

    private string Recipe(string name, string text)
    {
        var path = Path.Combine(root, name);
        File.WriteAllText(path, text);
        return path;
    }

    private static (int, string, string) Told(Ran ran) => (ran.ExitCode, ran.Output, ran.Error);
}
