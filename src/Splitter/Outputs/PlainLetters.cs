using System.Text;

namespace Splitter.Outputs;

/// <summary>
/// Text in printable ASCII, for a machine's display and the pictures' own letters: accents are left off, what has no
/// plain form becomes a question mark. The table is ours because a system's own may differ from the next one's.
/// </summary>
internal static class PlainLetters
{
    private const string Accented = "ÀÁÂÃÄÅĀĂĄÇĆČĎÐĐÈÉÊËĒĖĘĚĞÌÍÎÏĪĮİŁÑŃŇÒÓÔÕÖØŌŐŔŘŚŠŞŤÙÚÛÜŪŮŰŲÝŸŹŻŽ";
    private const string Plain = "AAAAAAAAACCCDDDEEEEEEEEGIIIIIIILNNNOOOOOOOORRSSSTUUUUUUUUYYZZZ";
    private const string AccentedSmall = "àáâãäåāăąçćčďðđèéêëēėęěğìíîïīįıłñńňòóôõöøōőŕřśšşťùúûüūůűųýÿźżž";
    private const string PlainSmall = "aaaaaaaaacccdddeeeeeeeegiiiiiiilnnnoooooooorrssstuuuuuuuuyyzzz";

    /// <param name="kept">Letters beside ASCII that need no other form.</param>
    internal static string Of(string text, string kept = "")
    {
        var plain = new StringBuilder();
        foreach (var rune in text.EnumerateRunes())
        {
            var c = rune.IsBmp ? (char)rune.Value : '\0';
            plain.Append(
                c switch
                {
                    >= ' ' and <= '~' => $"{c}",
                    _ when kept.Contains(c, StringComparison.Ordinal) => $"{c}",
                    'Æ' => "AE",
                    'æ' => "ae",
                    'Œ' => "OE",
                    'œ' => "oe",
                    'Þ' => "Th",
                    'þ' => "th",
                    'ß' => "ss",
                    '’' or '‘' or '′' => "'",
                    '“' or '”' or '″' => "\"",
                    '–' or '—' or '−' => "-",
                    '…' => "...",
                    '×' => "x",
                    '²' => "2",
                    '\u00A0' => " ",
                    _ => Letter(c),
                }
            );
        }
        return plain.ToString();
    }

    private static string Letter(char c) =>
        Accented.IndexOf(c, StringComparison.Ordinal) is >= 0 and var capital ? Plain[capital].ToString()
        : AccentedSmall.IndexOf(c, StringComparison.Ordinal) is >= 0 and var small ? PlainSmall[small].ToString()
        : "?";
}
