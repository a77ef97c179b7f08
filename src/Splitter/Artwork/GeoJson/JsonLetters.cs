using System.Text.Json;
using Splitter.Diagnostics;

namespace Splitter.Artwork.GeoJson;

/// <summary>
/// A parsed document has looked at the form of its texts, not at their letters: bytes that are not UTF-8, and halves of
/// a surrogate pair (<c>\ud800</c>), are found only when a text is asked for, and then without a place.
/// </summary>
internal static class JsonLetters
{
    /// <summary>Where the first text of a well-formed document stands that cannot be read; null if all can.</summary>
    internal static Place? Broken(SourceFile source)
    {
        var bytes = source.Bytes.Span;
        var reader = new Utf8JsonReader(bytes);
        while (reader.Read())
            if (reader.TokenType is JsonTokenType.String or JsonTokenType.PropertyName && !IsReadable(ref reader))
            {
                var before = bytes[..(int)reader.TokenStartIndex];
                return new(source.Path, before.Count((byte)'\n') + 1, before.Length - before.LastIndexOf((byte)'\n'));
            }
        return null;
    }

    private static bool IsReadable(ref Utf8JsonReader reader)
    {
        try
        {
            _ = reader.GetString();
            return true;
        }
        catch (InvalidOperationException)
        {
            return false;
        }
    }
}
