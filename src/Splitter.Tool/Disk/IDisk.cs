using System.Collections.Immutable;

namespace Splitter.Tool.Disk;

/// <summary>What stands at a path.</summary>
internal enum EntryKind
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>A plain file.</summary>
    File,

    /// <summary>A folder.</summary>
    Folder,

    /// <summary>A symbolic link or the like, wherever it leads.</summary>
    Link,
}

/// <summary>
/// The file operations that replacing a set needs, each of them small enough to be thought of as done or not done. A
/// test's own disk fails at any of them. All throw <see cref="IOException"/> or
/// <see cref="UnauthorizedAccessException"/>; but for <see cref="WithoutLinks"/>, none follows a link.
/// </summary>
internal interface IDisk
{
    EntryKind Kind(string path);

    /// <summary>The same folder by the one full path that has no link on its way.</summary>
    string WithoutLinks(string folder);

    /// <summary>Names in a folder, sorted.</summary>
    ImmutableArray<string> Names(string folder);

    /// <summary>Null for a file that has more bytes than are looked for: none of it is read.</summary>
    byte[]? Read(string file, int most);

    /// <summary>The folder and those above it.</summary>
    void CreateFolder(string folder);

    /// <summary>A file that does not exist yet.</summary>
    void Write(string file, ReadOnlySpan<byte> bytes);

    /// <summary>Renames a file, folder or link, on one volume; nothing stands at the new name.</summary>
    void Move(string from, string to);

    /// <summary>Two folders change names in one step; false where the system cannot.</summary>
    bool TryExchange(string one, string other);

    /// <summary>Deletes a file, a link, or an empty folder.</summary>
    void Delete(string path);

    /// <summary>Keeps other runs away until it is disposed; null when another run is at work.</summary>
    IDisposable? TryLock(string file);
}
