using Splitter.Tool.Disk;

namespace Splitter.Tool.Commands;

/// <summary>Reads a file that a person named; what is in the way becomes a phrase.</summary>
internal static class BoundedFile
{
    internal static (byte[] Bytes, string? Problem) Read(string path)
    {
        try
        {
            return Directory.Exists(path)
                ? ([], "is a folder")
                : PlainFile.Length(path) switch
                {
                    0 => ([], "is empty, or a pipe or a device and no plain file"),
                    > PlainFile.Largest => ([], $"has more than {PlainFile.Largest >> 20} MB"),
                    _ => (File.ReadAllBytes(path), null),
                };
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return ([], "does not exist");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            return ([], $"cannot be read ({e.Message.TrimEnd('.')})");
        }
    }
}
