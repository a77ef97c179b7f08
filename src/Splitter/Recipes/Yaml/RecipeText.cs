using System.Buffers;
using System.Text.Unicode;
using Splitter.Diagnostics;

namespace Splitter.Recipes.Yaml;

/// <summary>Bytes to text: UTF-8 and nothing else, so that a recipe means the same on every machine.</summary>
internal static class RecipeText
{
    /// <summary>A recipe is written by hand; the longest one with shapes of its own stays far below this.</summary>
    internal const int MostBytes = 1 << 20;

    private static ReadOnlySpan<byte> Utf8Mark => [0xEF, 0xBB, 0xBF];

    internal static Result<string> Decode(string file, ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length > MostBytes)
            return Result.Fail<string>(RecipeFileProblems.FileTooLarge(file, bytes.Length, MostBytes));
        if (bytes.StartsWith([(byte)0xFF, (byte)0xFE]) || bytes.StartsWith([(byte)0xFE, (byte)0xFF]))
            return Result.Fail<string>(RecipeFileProblems.Utf16(file));
        if (bytes.StartsWith(Utf8Mark))
            bytes = bytes[Utf8Mark.Length..];

        // UTF-8 never has more UTF-16 units than bytes.
        var units = new char[bytes.Length];
        var status = Utf8.ToUtf16(bytes, units, out _, out var written, replaceInvalidSequences: false);
        var text = units.AsSpan(0, written);
        if (status != OperationStatus.Done)
            return Result.Fail<string>(RecipeFileProblems.NotUtf8(EndOf(file, text)));
        var nul = text.IndexOf('\0');
        return nul < 0
            ? Result.Of(text.ToString())
            : Result.Fail<string>(RecipeFileProblems.NulCharacter(EndOf(file, text[..nul])));
    }

    /// <summary>The place right after a text that the file begins with.</summary>
    private static Place EndOf(string file, ReadOnlySpan<char> text) =>
        new(file, text.Count('\n') + 1, text.Length - text.LastIndexOf('\n'));
}
