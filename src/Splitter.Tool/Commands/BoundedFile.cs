namespace Splitter.Tool.Commands;

/// <summary>Reads a file that a person named; what is in the way becomes a phrase.</summary>
internal static class BoundedFile
{
    /// <summary>Larger artwork or tapes, in bytes, are none; reading them would only fill the memory.</summary>
    private const int Largest = 64 << 20;

    internal static (byte[] Bytes, string? Problem) Read(string path)
    {
        try
        {
            if (Directory.Exists(path))
                return ([], "is a folder");
            using var stream = File.OpenRead(path);
            using var memory = new MemoryStream();
            var block = new byte[1 << 16];
            for (int count; (count = stream.Read(block)) > 0; )
            {
                memory.Write(block.AsSpan(0, count));
                if (memory.Length > Largest)
                    return ([], $"has more than {Largest >> 20} MB");
            }
            return (memory.ToArray(), null);
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
