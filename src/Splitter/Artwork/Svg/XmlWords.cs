namespace Splitter.Artwork.Svg;

/// <summary>Lists of words in attributes.</summary>
internal static class XmlWords
{
    private static readonly char[] Space = [' ', '\t', '\r', '\n', '\f'];

    internal static string[] Of(string? list) => list?.Split(Space, StringSplitOptions.RemoveEmptyEntries) ?? [];
}
