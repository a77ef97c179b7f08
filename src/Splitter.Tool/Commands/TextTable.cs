using System.Text;

namespace Splitter.Tool.Commands;

/// <summary>Columns of text that line up, the same on a terminal and in a file. Numbers stand on the right.</summary>
internal sealed class TextTable(params string[] heads)
{
    /// <summary>Blanks between columns.</summary>
    private const string Gap = "  ";

    private readonly List<string[]> rows = [heads];

    internal void Add(params string[] cells) => rows.Add(cells);

    public override string ToString()
    {
        var widths = heads.Select((_, column) => rows.Max(row => row[column].Length)).ToArray();
        var text = new StringBuilder();
        foreach (var row in rows)
        {
            var cells = row.Select((cell, i) => IsNumbers(i) ? cell.PadLeft(widths[i]) : cell.PadRight(widths[i]));
            text.Append(string.Join(Gap, cells).TrimEnd()).Append('\n');
        }
        return text.ToString();
    }

    private bool IsNumbers(int column) =>
        rows.Count > 1 && rows.Skip(1).All(row => row[column].Length == 0 || char.IsAsciiDigit(First(row[column])));

    /// <summary>What a cell begins with, behind the sign of a number.</summary>
    private static char First(string cell) => cell is ['-', var next, ..] ? next : cell[0];
}
