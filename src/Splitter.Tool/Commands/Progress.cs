using Spectre.Console;

namespace Splitter.Tool.Commands;

/// <summary>What is being worked on, shown on a terminal only and gone when the work is done.</summary>
internal sealed class Progress
{
    private StatusContext? status;
    private volatile bool writing;

    /// <summary>
    /// Work on another thread, so that Ctrl+C is heard. A stopped work is left alone, since nothing of it shows; only
    /// writing is waited for.
    /// </summary>
    internal static async Task<T> Around<T>(
        AnswerFormat format,
        TextWriter error,
        Func<Progress, T> work,
        CancellationToken stop
    )
    {
        var progress = new Progress();
        async Task<T> Run()
        {
            var task = Task.Run(() => work(progress), stop);
            try
            {
                return await task.WaitAsync(stop);
            }
            catch (OperationCanceledException) when (progress.writing)
            {
                return await task;
            }
        }

        // Someone who catches the output of a command in a test or a pipe gets results and diagnostics only.
        if (format != AnswerFormat.Text || error != Console.Error || Console.IsErrorRedirected)
            return await Run();
        var terminal = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(error) });
        return await terminal
            .Status()
            .StartAsync(
                "reading",
                context =>
                {
                    progress.status = context;
                    return Run();
                }
            );
    }

    internal void Say(string what) => status?.Status(Markup.Escape(what));

    /// <summary>From here on the process does not end before the work does: files are whole or not there.</summary>
    internal void BeginWriting(CancellationToken stop)
    {
        // In this order: a stop is seen either here or by whoever waits.
        writing = true;
        stop.ThrowIfCancellationRequested();
        Say("writing");
    }
}
