using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using Splitter.Tool.Commands;

namespace Splitter.Tool;

/// <summary>The commands, and what becomes of a call: an exit code.</summary>
internal static class CommandLine
{
    /// <summary>Work that is stopped gets this long to put things in order before the process ends.</summary>
    private static readonly TimeSpan TimeToStop = TimeSpan.FromSeconds(10);

    internal static async Task<int> Run(
        string[] args,
        TextWriter output,
        TextWriter error,
        CancellationToken stop = default
    )
    {
        // A recipe may be called @bay.yaml: nothing is read from response files.
        var call = Commands(output, error).Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (call.Action is ParseErrorAction)
            return Answer
                .Wrong(call.Errors.Select(e => CallProblems.NotUnderstood(e.Message)))
                .Write(AnswerFormat.Text, output, error);
        return await call.InvokeAsync(
            new InvocationConfiguration
            {
                Output = output,
                Error = error,
                EnableDefaultExceptionHandler = false,
                ProcessTerminationTimeout = TimeToStop,
            },
            stop
        );
    }

    /// <summary>In the order in which a person comes to need them.</summary>
    internal static RootCommand Commands(TextWriter output, TextWriter error)
    {
        var root = new RootCommand(
            "Splits embroidery that is larger than the hoop into parts that meet. Begin with 'new' and a drawing, "
                + "look at its 'plan', then 'make' it."
        )
        {
            NewCommand.Create(output, error),
            PlanCommand.Create(output, error),
            MakeCommand.Create(output, error),
            CheckCommand.Create(output, error),
            CompareCommand.Create(output, error),
            InspectCommand.Create(output, error),
            RealignCommand.Create(output, error),
            SchemaCommand.Create(output),
        };
        foreach (var help in root.Options.OfType<HelpOption>())
            help.Action = new HelpWithExamples((HelpAction)help.Action!);
        return root;
    }
}
