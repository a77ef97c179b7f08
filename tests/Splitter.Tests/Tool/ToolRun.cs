using Splitter.Tool;

namespace Splitter.Tests.Tool;

/// <summary>The commands, run inside the test's process: what they return and write.</summary>
internal static class ToolRun
{
    internal static async Task<Ran> Run(params string[] call)
    {
        await using var output = new StringWriter { NewLine = "\n" };
        await using var error = new StringWriter { NewLine = "\n" };
        var code = await CommandLine.Run(call, output, error);
        return new(code, output.ToString(), error.ToString());
    }
}
