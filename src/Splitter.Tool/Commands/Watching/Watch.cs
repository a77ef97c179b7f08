namespace Splitter.Tool.Commands.Watching;

/// <summary>Work that is done again whenever a file that it looked at is written, until Ctrl+C.</summary>
internal static class Watch
{
    /// <summary>
    /// Editors write a file in several goes: what is written is looked at when it has been quiet this long.
    /// </summary>
    private static readonly TimeSpan Quiet = TimeSpan.FromMilliseconds(200);

    /// <summary>Events after which it is done again in any case: a saved file makes a handful.</summary>
    private const int MostWaits = 100;

    /// <summary>Folders on a network tell nothing of what is written there: they are looked at this often.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(2);

    /// <param name="isAsked">Else it is done once.</param>
    /// <param name="work">Writes its answer, be it errors, and returns the exit code.</param>
    internal static async Task<int> Around(
        bool isAsked,
        TextWriter error,
        Func<InputFiles, Task<int>> work,
        CancellationToken stop
    )
    {
        while (true)
        {
            var inputs = new InputFiles();
            var exitCode = await work(inputs);
            if (!isAsked)
                return exitCode;
            await error.WriteAsync($"splitter: watching {inputs.Paths.Count} files; Ctrl+C ends\n");
            await error.FlushAsync(stop);
            await Changed(inputs, stop);
        }
    }

    private static async Task Changed(InputFiles inputs, CancellationToken stop)
    {
        using var told = new SemaphoreSlim(0);
        var folders = inputs.Paths.Select(path => Path.GetDirectoryName(path)!).Distinct(StringComparer.Ordinal);
        var watchers = folders.Select(folder => TryOver(folder, told)).OfType<FileSystemWatcher>().ToList();
        try
        {
            while (!inputs.HaveChanged)
                await told.WaitAsync(Patience, stop);
            // A file that is never quiet, a log beside the drawing, does not hold the work up for ever.
            for (var i = 0; i < MostWaits && await told.WaitAsync(Quiet, stop); i++) { }
        }
        finally
        {
            foreach (var watcher in watchers)
                watcher.Dispose();
        }
    }

    /// <summary>
    /// Null where no more folders can be watched, or it has gone: files are looked at now and then all the same.
    /// </summary>
    private static FileSystemWatcher? TryOver(string folder, SemaphoreSlim told)
    {
        try
        {
            return Over(folder, told);
        }
        catch (Exception e) when (e is IOException or ArgumentException)
        {
            return null;
        }
    }

    private static FileSystemWatcher Over(string folder, SemaphoreSlim told)
    {
        var watcher = new FileSystemWatcher(folder);
        void Tell(object sender, EventArgs change)
        {
            try
            {
                told.Release();
            }
            catch (ObjectDisposedException)
            {
                // A last event after the change that was waited for.
            }
        }
        watcher.Changed += Tell;
        watcher.Created += Tell;
        watcher.Deleted += Tell;
        watcher.Renamed += Tell;
        watcher.EnableRaisingEvents = true;
        return watcher;
    }
}
