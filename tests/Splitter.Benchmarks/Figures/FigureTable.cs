using System.Text;

namespace Splitter.Benchmarks.Figures;

/// <summary>A table of figures that stands in DEVELOPERS.md between two comments.</summary>
internal static class FigureTable
{
    /// <summary>Puts lines between <c>&lt;!-- name --&gt;</c> and <c>&lt;!-- end of name --&gt;</c>, and prints them.</summary>
    internal static void Write(string name, IEnumerable<string> lines)
    {
        var table = new StringBuilder();
        foreach (var line in lines)
            table.Append(line).Append('\n');
        var file = Repository.Find("DEVELOPERS.md");
        var text = File.ReadAllText(file);
        var (begin, end) = ($"<!-- {name} -->", $"<!-- end of {name} -->");
        var (from, to) = (
            text.IndexOf(begin, StringComparison.Ordinal) + begin.Length,
            text.IndexOf(end, StringComparison.Ordinal)
        );
        File.WriteAllText(file, $"{text[..from]}\n{table}{text[to..]}");
        Console.Write(table);
    }
}
