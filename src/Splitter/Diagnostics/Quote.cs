using System.Text;

namespace Splitter.Diagnostics;

/// <summary>Pieces of a file as messages show them.</summary>
internal static class Quote
{
    /// <summary>Longer pieces are cut short.</summary>
    private const int Longest = 40;

    /// <summary>In quotation marks.</summary>
    internal static string Quoted(string text) => $"'{Short(text)}'";

    /// <summary>Fit for one line: without control characters, not too long.</summary>
    /// <param name="longest">In characters.</param>
    internal static string Short(string text, int longest = Longest)
    {
        var line = new StringBuilder();
        foreach (var rune in text.EnumerateRunes())
        {
            if (line.Length >= longest)
                return line.Append('…').ToString();
            line.Append(Rune.IsControl(rune) ? " " : rune.ToString());
        }
        return line.ToString();
    }
}
