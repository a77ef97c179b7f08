namespace Splitter.Tool.Commands.Watching;

/// <summary>Work that is done again whenever a file that it looked at is written, until Ctrl+C.</summary>
internal static class Watch
{
    /// <summary>Editors write a file in several goes: what is written is looked at when it has been quiet this long.</summary>
    private static readonly TimeSpan Quiet = TimeSpan.FromMilliseconds(200);

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
        var watchers = folders.Where(Directory.Exists).Select(folder => Over(folder, told)).ToList();
        try
        {
            while (!inputs.HaveChanged)
                await told.WaitAsync(Patience, stop);
            while (await told.WaitAsync(Quiet, stop)) { }
        }
        finally
        {
            foreach (var watcher in watchers)
                watcher.Dispose();
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
