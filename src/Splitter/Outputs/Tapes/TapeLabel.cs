using Splitter.Tapes;

namespace Splitter.Outputs.Tapes;

/// <summary>What a machine shows of a part: as much of the title as there is room for, and the part's letter.</summary>
internal static class TapeLabel
{
    internal static string Of(string title, string letter)
    {
        var plain = PlainLetters.Of(title);
        var room = TapeHeader.LabelLength - letter.Length - 1;
        return $"{plain[..Math.Min(plain.Length, Math.Max(0, room))].TrimEnd()} {letter}".TrimStart();
    }
}
