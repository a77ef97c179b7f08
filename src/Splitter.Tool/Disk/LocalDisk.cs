using System.Collections.Immutable;

namespace Splitter.Tool.Disk;

/// <summary>The machine's own disk.</summary>
internal sealed class LocalDisk : IDisk
{
    public EntryKind Kind(string path)
    {
        // Attributes of a link are its own: they tell a link from what it leads to.
        var info = new FileInfo(path);
        if (info.LinkTarget is not null)
            return EntryKind.Link;
        var attributes = info.Attributes;
        return (int)attributes == -1 ? EntryKind.None
            : attributes.HasFlag(FileAttributes.ReparsePoint) ? EntryKind.Link
            : attributes.HasFlag(FileAttributes.Directory) ? EntryKind.Folder
            : EntryKind.File;
    }

    public string WithoutLinks(string folder)
    {
        if (Path.GetDirectoryName(folder) is not { } above)
            return folder;
        var path = Path.Combine(WithoutLinks(above), Path.GetFileName(folder));
        return Directory.ResolveLinkTarget(path, returnFinalTarget: true) is { } target
            ? WithoutLinks(target.FullName)
            : path;
    }

    public ImmutableArray<string> Names(string folder) =>
        [
            .. Directory
                .EnumerateFileSystemEntries(folder)
                .Select(path => Path.GetFileName(path)!)
                .Order(StringComparer.Ordinal),
        ];

    public byte[]? Read(string file, int most) => PlainFile.Length(file) > most ? null : PlainFile.Read(file);

    public void CreateFolder(string folder) => Directory.CreateDirectory(folder);

    public void Write(string file, ReadOnlySpan<byte> bytes)
    {
        using var stream = new FileStream(file, FileMode.CreateNew, FileAccess.Write);
        stream.Write(bytes);
    }

    public void Move(string from, string to)
    {
        if (Kind(from) == EntryKind.Folder)
            Directory.Move(from, to);
        else
            File.Move(from, to, overwrite: false);
    }

    public bool TryExchange(string one, string other) => FolderExchange.Try(one, other);

    public void Delete(string path)
    {
        if (Kind(path) == EntryKind.Folder)
            Directory.Delete(path, recursive: false);
        else
            File.Delete(path);
    }

    public IDisposable? TryLock(string file)
    {
        try
        {
            return new FileStream(
                file,
                FileMode.OpenOrCreate,
                FileAccess.ReadWrite,
                FileShare.None,
                bufferSize: 1,
                FileOptions.DeleteOnClose
            );
        }
        catch (IOException) when (File.Exists(file))
        {
            return null;
        }
    }
}
