using Splitter.Diagnostics;
using Splitter.Recipes;

namespace Splitter.Tool.Commands;

/// <summary>A picture, where the person asked for it.</summary>
internal static class PictureFile
{
    internal static OutputKind? KindOf(string? file) =>
        file is null ? null
        : file.EndsWith(".svg", StringComparison.OrdinalIgnoreCase) ? OutputKind.Svg
        : file.EndsWith(".png", StringComparison.OrdinalIgnoreCase) ? OutputKind.Png
        : null;

    internal static Diagnostic? Write(string file, ReadOnlySpan<byte> bytes)
    {
        try
        {
            File.WriteAllBytes(file, bytes);
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            return CallProblems.CannotWritePicture(file, e.Message);
        }
    }
}
