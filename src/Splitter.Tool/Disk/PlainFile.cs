namespace Splitter.Tool.Disk;

/// <summary>
/// Files are opened only if they have bytes. Pipes and devices have none, whatever can be read from them: to open a
/// pipe is to wait for who writes into it, and some devices never end.
/// </summary>
internal static class PlainFile
{
    /// <summary>Larger files, in bytes, are none that can be used; reading them would only fill the memory.</summary>
    internal const int Largest = 64 << 20;

    /// <summary>All of it, however long; nothing of a pipe or a device.</summary>
    internal static byte[] Read(string path) => Length(path) == 0 ? [] : File.ReadAllBytes(path);

    /// <summary>In bytes, of the file itself or of that to which a link leads.</summary>
    internal static long Length(string path)
    {
        var file = new FileInfo(path);
        return ((FileInfo?)file.ResolveLinkTarget(returnFinalTarget: true) ?? file).Length;
    }
}
