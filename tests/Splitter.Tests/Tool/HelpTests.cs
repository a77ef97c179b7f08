using Splitter.Tool;
using Splitter.Tool.Commands;

namespace Splitter.Tests.Tool;

/// <summary>What help shows as an example can be called as it stands, in a clone of the repository.</summary>
public sealed class HelpTests
{
    /// <summary>Of where an example writes, there is nothing yet.</summary>
    private static readonly string[] Given = ["recipes/", "examples/"];

    private static readonly string[] All =
    [
        .. CommandLine
            .Commands(TextWriter.Null, TextWriter.Null)
            .Subcommands.OfType<ExampleCommand>()
            .SelectMany(command => command.Examples),
    ];

    public static TheoryData<string> Examples => [.. All];

    [Theory]
    [MemberData(nameof(Examples))]
    public void AnExampleIsUnderstoodAndItsFilesAreThere(string example)
    {
        var words = Words(example);
        Assert.Equal("splitter", words[0]);
        var call = CommandLine.Commands(TextWriter.Null, TextWriter.Null).Parse(words[1..]);
        Assert.Empty(call.Errors);
        Assert.All(
            words.Where(word => Given.Any(folder => word.StartsWith(folder, StringComparison.Ordinal))),
            word => Assert.True(IsThere(word), $"{word} is not there")
        );
    }

    /// <summary>Those that take no time.</summary>
    [Theory]
    [InlineData("new")]
    [InlineData("inspect")]
    [InlineData("schema")]
    public async Task TheFirstOfItsExamplesRuns(string command)
    {
        var scratch = Directory.CreateTempSubdirectory("splitter-help-").FullName;
        try
        {
            var example = All.First(text => text.StartsWith($"splitter {command} ", StringComparison.Ordinal));
            var words = Words(example)[1..]
                .Select(word =>
                    word == "bay.yaml" ? Path.Combine(scratch, word)
                    : word.StartsWith("examples/", StringComparison.Ordinal) ? Repository.Path(word)
                    : word
                );
            var ran = await ToolRun.Run([.. words]);
            Assert.Equal((0, ""), (ran.ExitCode, ran.Error));
            Assert.NotEmpty(ran.Output);
        }
        finally
        {
            Directory.Delete(scratch, recursive: true);
        }
    }

    /// <summary>As a shell parts them; what comes after a redirection is the shell's.</summary>
    private static string[] Words(string example) => example.Split(" > ")[0].Split(' ');

    private static bool IsThere(string path) =>
        path.Contains('*', StringComparison.Ordinal)
            ? Directory.EnumerateFiles(Repository.Path(Path.GetDirectoryName(path)!), Path.GetFileName(path)).Any()
            : Path.Exists(Repository.Path(path));
}
