using Spectre.Console;

namespace Splitter.Tool.Commands;

/// <summary>What is being worked on, shown on a terminal only and gone when the work is done.</summary>
internal sealed class Progress
{
    private StatusContext? status;

    /// <summary>Work on another thread, so that Ctrl+C is heard; a stopped work is left alone, since nothing of it shows.</summary>
    internal static async Task<T> Around<T>(
        AnswerFormat format,
        TextWriter error,
        Func<Progress, T> work,
        CancellationToken stop
    )
    {
        var progress = new Progress();
        Task<T> Run() => Task.Run(() => work(progress), stop).WaitAsync(stop);

        // Someone who catches the output of a command in a test or a pipe gets results and diagnostics only.
        if (format == AnswerFormat.Json || error != Console.Error || Console.IsErrorRedirected)
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
}
