using System.CommandLine;

namespace Splitter.Tool.Commands;

/// <summary>A command that is given recipes and makes them all: make and check.</summary>
internal static class BatchCommand
{
    internal static Command Create(
        string name,
        string description,
        bool writes,
        Func<BatchCall, Progress, CancellationToken, Answer> run,
        TextWriter output,
        TextWriter error,
        params string[] examples
    )
    {
        var options = new BatchOptions();
        var format = SharedOptions.Format();
        var command = new ExampleCommand(name, description, examples)
        {
            options.Recipes,
            options.Hoop,
            options.Out,
            options.Jobs,
            format,
        };
        if (writes)
        {
            command.Add(options.Inputs);
            command.Add(options.Outputs);
        }
        command.SetAction(
            async (call, stop) =>
            {
                var batch = options.Of(call);
                var form = call.GetValue(format);
                var answer = await Progress.Around(form, error, progress => run(batch, progress, stop), stop);
                return answer.Write(form, output, error);
            }
        );
        return command;
    }
}
