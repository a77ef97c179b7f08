using Splitter.Diagnostics;
using Splitter.Outputs;
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

    /// <summary>Into a folder, which is made if need be.</summary>
    internal static Diagnostic? WriteInto(string folder, OutputFile file)
    {
        try
        {
            Directory.CreateDirectory(folder);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            return CallProblems.CannotWritePicture(folder, e.Message);
        }
        return Write(Path.Combine(folder, file.Path), file.Bytes.Span);
    }

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
