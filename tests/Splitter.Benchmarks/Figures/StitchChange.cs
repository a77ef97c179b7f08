using System.Diagnostics;
using System.Globalization;

namespace Splitter.Benchmarks.Figures;

/// <summary>
/// The table of stitches as they were when they were first measured against what they are now. The values of then are
/// those of this program at that commit, penetrations counted as they are now.
/// </summary>
/// <param name="Name">As the table of stitches has it.</param>
internal sealed record StitchChange(
    string Name,
    string Stitches,
    string Trims,
    string Layers,
    string Above,
    string Holes
)
{
    /// <summary>The commit at which the values of then were measured.</summary>
    private const string Then = "8d813ea";

    private const string Header = """
        | artwork | stitches | trims a shape | layers, most | mm² above 3 | penetrations, most | covered | colour |
        | --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |
        """;

    public required string Covered { get; init; }
    public required string Coloured { get; init; }

    /// <summary>One line for each row whose values of then are known.</summary>
    internal static IEnumerable<string> Lines(IEnumerable<StitchRow> rows)
    {
        var then = File.ReadLines(Repository.Find("tests", "Splitter.Benchmarks", "Figures", $"stitches-{Then}.csv"))
            .Skip(1)
            .Select(line => Read(line.Split(';')))
            .ToDictionary(c => c.Name);
        return
        [
            Header,
            .. rows.Where(r => then.ContainsKey(r.Name)).Select(r => then[r.Name].To(Of(r))),
            "",
            $"Before: commit {Then}. After: commit {Now()}.",
        ];
    }

    private static StitchChange Of(StitchRow row) =>
        new(
            row.Name,
            Text($"{row.Stitches}"),
            Text($"{(double)row.Trims / row.Shapes:0.0}"),
            Text($"{row.Most:0.0}"),
            Text($"{row.Above}"),
            Text($"{row.Penetrations}")
        )
        {
            Covered = Text($"{100 * row.Agreement.Covered:0.0}"),
            Coloured = Text($"{100 * row.Agreement.Coloured:0.0}"),
        };

    private static StitchChange Read(string[] values) =>
        new(values[0], values[1], values[2], values[3], values[4], values[5])
        {
            Covered = values[6],
            Coloured = values[7],
        };

    private string To(StitchChange now) =>
        $"| {Name} | {Stitches} → {now.Stitches} | {Trims} → {now.Trims} | {Layers} → {now.Layers} | {Above} → {now.Above} | {Holes} → {now.Holes} | {Covered} → {now.Covered} | {Coloured} → {now.Coloured} |";

    /// <summary>The commit that is checked out, and whether files differ from it.</summary>
    private static string Now() =>
        Git("rev-parse", "--short", "HEAD")
        + (Git("status", "--porcelain", "--", "src", "tests", "recipes").Length > 0 ? " with changes" : "");

    private static string Git(params string[] call)
    {
        using var git = Process.Start(
            new ProcessStartInfo("git", call)
            {
                UseShellExecute = false,
                RedirectStandardOutput = true,
                WorkingDirectory = Repository.Folder,
            }
        )!;
        var said = git.StandardOutput.ReadToEnd();
        git.WaitForExit();
        return said.Trim();
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
