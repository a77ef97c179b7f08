namespace Splitter.Tool.Disk;

/// <summary>
/// Files are opened only if they have bytes. Pipes and devices have none, whatever can be read from them: to open a
/// pipe is to wait for who writes into it, and some devices never end.
/// </summary>
internal static class PlainFile
{
    /// <summary>In bytes, of the file itself or of that to which a link leads.</summary>
    internal static long Length(string path)
    {
        var file = new FileInfo(path);
        return ((FileInfo?)file.ResolveLinkTarget(returnFinalTarget: true) ?? file).Length;
    }
}
