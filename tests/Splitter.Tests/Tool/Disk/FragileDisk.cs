using System.Collections.Immutable;
using Splitter.Tool.Disk;

namespace Splitter.Tests.Tool.Disk;

/// <summary>How a disk fails at one of its operations.</summary>
public enum Failure
{
    /// <summary>The operation fails, later ones work: a full disk, a file held open.</summary>
    Once,

    /// <summary>Nothing works from there on, as when the process is killed.</summary>
    FromThereOn,

    /// <summary>The same, after half of a file was written.</summary>
    HalfWay,

    /// <summary>Somebody deletes the output folder, and the operation is tried all the same.</summary>
    FolderGone,
}

/// <summary>A real disk that fails at its n-th change.</summary>
/// <param name="output">The folder that goes.</param>
internal sealed class FragileDisk(int at, Failure how, bool exchanges, string output = "") : IDisk
{
    private readonly LocalDisk disk = new();

    /// <summary>Changes asked for so far.</summary>
    internal int Changes { get; private set; }

    public EntryKind Kind(string path) => disk.Kind(path);

    public string WithoutLinks(string folder) => disk.WithoutLinks(folder);

    public ImmutableArray<string> Names(string folder) => disk.Names(folder);

    public byte[]? Read(string file, int most) => disk.Read(file, most);

    public void CreateFolder(string folder) => Change(() => disk.CreateFolder(folder));

    public void Write(string file, ReadOnlySpan<byte> bytes)
    {
        if (Changes == at && how == Failure.HalfWay)
            disk.Write(file, bytes[..(bytes.Length / 2)]);
        var copy = bytes.ToArray();
        Change(() => disk.Write(file, copy));
    }

    public void Move(string from, string to) => Change(() => disk.Move(from, to));

    public bool TryExchange(string one, string other)
    {
        var done = false;
        if (exchanges)
            Change(() => done = disk.TryExchange(one, other));
        return done;
    }

    public void Delete(string path) => Change(() => disk.Delete(path));

    public IDisposable? TryLock(string file) => disk.TryLock(file);

    private void Change(Action change)
    {
        var now = Changes++;
        if (how == Failure.FolderGone)
        {
            if (now == at && Directory.Exists(output))
                Directory.Delete(output, recursive: true);
        }
        else if (how == Failure.Once ? now == at : now >= at)
            throw new IOException($"change {now} fails");
        change();
    }
}
