using System.Text;
using Splitter.Tool;
using Splitter.Tool.Commands;

// Builds and scripts ask for the version often: it is told before the commands are loaded, which takes as long as to
// start, and past the console's writer with its encodings and signals. The entry is not asynchronous, since
// parts of such a one are compiled at every start even so.
try
{
    if (args is not ["--version"])
        return Run(args).GetAwaiter().GetResult();
    using var output = Console.OpenStandardOutput();
    output.Write(Encoding.UTF8.GetBytes(ToolVersion.Text + "\n"));
    return ExitCode.Done;
}
catch (IOException e)
{
    // Each command answers for the files that it reads and writes: what is left is its answer itself.
    Console.Error.WriteLine(CallProblems.CannotAnswer(e.Message));
    return ExitCode.WrongInput;
}

// The one place that ends the process, and the one that catches what nobody expected.
static async Task<int> Run(string[] args)
{
    try
    {
        return await CommandLine.Run(args, Console.Out, Console.Error);
    }
    catch (OperationCanceledException)
    {
        await Console.Error.WriteLineAsync("splitter: stopped; what was there before is still there");
        return ExitCode.Stopped;
    }
#pragma warning disable CA1031 // Whatever it is, it is a defect of ours, and the person is told so.
    catch (Exception defect) when (defect is not IOException)
#pragma warning restore CA1031
    {
        await Console.Error.WriteLineAsync(DefectReport.Text(defect));
        return ExitCode.Defect;
    }
}
