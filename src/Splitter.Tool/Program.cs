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
catch (Exception e) when (IsOfTheAnswer(e))
{
    return Ended(CallProblems.CannotAnswer(e.Message).ToString(), ExitCode.WrongInput);
}

// Each command answers for the files that it reads and writes: what is left is where its answer goes, which has no room
// or is closed. A kind of error more exact than that is of a file, such as one of the tool's own that is missing.
static bool IsOfTheAnswer(Exception e) => e is UnauthorizedAccessException || e.GetType() == typeof(IOException);

static int Ended(string why, int code)
{
    try
    {
        Console.Error.WriteLine(why);
    }
    catch (Exception e) when (IsOfTheAnswer(e))
    {
        // There is nowhere left to say it; the code does.
    }
    return code;
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
        return Ended("splitter: stopped; what was there before is still there", ExitCode.Stopped);
    }
#pragma warning disable CA1031 // Whatever it is, it is a defect of ours, and the person is told so.
    catch (Exception defect) when (!IsOfTheAnswer(defect))
#pragma warning restore CA1031
    {
        return Ended(DefectReport.Text(defect), ExitCode.Defect);
    }
}
