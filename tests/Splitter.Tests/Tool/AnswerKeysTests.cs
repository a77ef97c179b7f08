using System.Text.Json;
using System.Text.RegularExpressions;

namespace Splitter.Tests.Tool;

/// <summary>The tables of src/Splitter.Tool/ANSWERS.md of what a program is answered have the keys that are there, all of them and in their order.</summary>
public sealed partial class AnswerKeysTests : IDisposable
{
    private readonly string root = Directory.CreateTempSubdirectory("splitter-keys-").FullName;

    /// <summary>For what stands first in a row of the tables the text of its second cell.</summary>
    private readonly ILookup<string, string> rows = Row()
        .Matches(File.ReadAllText(Repository.Path("src/Splitter.Tool/ANSWERS.md")).ReplaceLineEndings("\n"))
        .ToLookup(m => m.Groups["first"].Value, m => m.Groups["second"].Value);

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Fact]
    public async Task MakeCheckAndInspect()
    {
        var recipe = Recipe();
        var made = await Answered("make", recipe);
        Assert.Equal(rows.Select(r => r.Key).TakeWhile(k => k != "diagnostics[]").Append("diagnostics"), Names(made));
        AssertKeys("make", made.GetProperty("result")[0]);
        AssertKeys("inspect", (await Answered("inspect", At("parts", "small", "part-A.dst"))).GetProperty("result"));
        File.Delete(At("parts", "small", "part-A.csv"));
        AssertKeys("check", (await Answered("check", recipe)).GetProperty("result")[0]);
    }

    [Fact]
    public async Task Realign()
    {
        var recipe = Recipe();
        await ToolRun.Run("make", recipe);
        string[] measured = ["--at", "A1 0.6mm right", "--at", "A2 0.6mm right"];
        var moved = await Answered("realign", recipe, ["--hoop", "small", "--part", "B", .. measured]);
        AssertKeys("realign", moved.GetProperty("result"));
    }

    [Fact]
    public async Task Plan()
    {
        var result = (await Answered("plan", Recipe())).GetProperty("result");
        // Two rows and the list of hoops are the result itself.
        Assert.Equal(["plan", "recipe", "title", "width_mm", "height_mm", "hoops"], Names(result));
        Assert.True(rows.Contains("plan"));
        var small = result.GetProperty("hoops")[0];
        AssertKeys("hoops[]", small);
        AssertKeys("totals", small.GetProperty("totals"));
        AssertKeys("seam_mm", small.GetProperty("seam_mm"));
        foreach (var list in new[] { "parts", "corners", "joins" })
            AssertKeys($"{list}[]", small.GetProperty(list)[0]);
    }

    /// <summary>The keys of a row, and in parentheses behind one those of what it holds.</summary>
    private void AssertKeys(string row, JsonElement element)
    {
        var told = Key().Matches(Assert.Single(rows[row]));
        Assert.Equal(told.Select(m => m.Groups["key"].Value), Names(element));
        foreach (Match match in told.Where(m => m.Groups["inner"].Success))
        {
            var held = element.GetProperty(match.Groups["key"].Value);
            Assert.Equal(
                Key().Matches(match.Groups["inner"].Value).Select(m => m.Groups["key"].Value),
                Names(held.ValueKind == JsonValueKind.Array ? held[0] : held)
            );
        }
    }

    private static IEnumerable<string> Names(JsonElement element) => element.EnumerateObject().Select(p => p.Name);

    private static async Task<JsonElement> Answered(string command, string file, params string[] more)
    {
        var ran = await ToolRun.Run([command, file, .. more, "--format", "json"]);
        using var document = JsonDocument.Parse(ran.Output);
        return document.RootElement.Clone();
    }

    private string Recipe()
    {
        File.WriteAllText(At("sails.yaml"), CommandTests.Recipe);
        return At("sails.yaml");
    }

    private string At(params string[] parts) => Path.Combine([root, .. parts]);

    [GeneratedRegex(
        @"^\| `(?<first>[^`]+)`[^|]*\| (?<second>.*) \|$",
        RegexOptions.ExplicitCapture | RegexOptions.Multiline,
        1000
    )]
    private static partial Regex Row();

    [GeneratedRegex(@"`(?<key>\w+)(\[\])?`( \((?<inner>`[^)]*)\))?", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Key();
}
