using System.Runtime.InteropServices;

namespace Splitter.Tool.Disk;

/// <summary>
/// Two folders change names in one step, so that at no moment there is none: renameat2 with RENAME_EXCHANGE, Linux 3.15
/// and later (man page rename(2)). Elsewhere, and on file systems without it, two renames do.
/// </summary>
internal static partial class FolderExchange
{
    /// <summary>AT_FDCWD of fcntl.h: paths are relative to the current folder.</summary>
    private const int CurrentFolder = -100;

    /// <summary>RENAME_EXCHANGE of linux/fs.h.</summary>
    private const uint Exchange = 2;

    internal static bool Try(string one, string other)
    {
        if (!OperatingSystem.IsLinux())
            return false;
        try
        {
            return Rename(CurrentFolder, one, CurrentFolder, other, Exchange) == 0;
        }
        catch (EntryPointNotFoundException)
        {
            // A C library older than the call.
            return false;
        }
    }

    [LibraryImport("libc", EntryPoint = "renameat2", StringMarshalling = StringMarshalling.Utf8)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int Rename(int oneFolder, string one, int otherFolder, string other, uint flags);
}
