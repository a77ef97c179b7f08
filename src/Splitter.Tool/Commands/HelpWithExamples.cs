using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace Splitter.Tool.Commands;

/// <summary>The usual help, then how the command is called, and what the process returns.</summary>
internal sealed class HelpWithExamples(HelpAction usual) : SynchronousCommandLineAction
{
    private const string Codes = """
        Exit codes:
          0   done
          1   differences found
          2   something in the input or the call is wrong; no set is half-written
          70  a defect of Splitter
          130 stopped with Ctrl+C; the old files are still there

        """;

    public override bool ClearsParseErrors => true;

    public override int Invoke(ParseResult parseResult)
    {
        var result = usual.Invoke(parseResult);
        var output = parseResult.InvocationConfiguration.Output;
        var command = parseResult.CommandResult.Command;
        var examples = command is ExampleCommand own
            ? own.Examples
            : command.Subcommands.OfType<ExampleCommand>().Select(c => c.Examples[0]);
        output.Write("Examples, in a clone of Splitter's repository:\n");
        foreach (var example in examples)
            output.Write($"  {example}\n");
        output.Write($"\n{Codes.ReplaceLineEndings("\n")}");
        return result;
    }
}
