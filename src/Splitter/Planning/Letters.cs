namespace Splitter.Planning;

/// <summary>Letters of parts: A, B, … Z, AA, AB, …</summary>
internal static class Letters
{
    internal static string Of(int index) =>
        index < 26 ? $"{(char)('A' + index)}" : Of((index / 26) - 1) + (char)('A' + (index % 26));
}
