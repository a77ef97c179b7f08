using System.CommandLine;
using Splitter.Checking;
using Splitter.Recipes;

namespace Splitter.Tool.Commands;

/// <summary><c>splitter inspect</c>: what a tape holds, whoever made it.</summary>
internal static class InspectCommand
{
    internal static Command Create(TextWriter output, TextWriter error)
    {
        var tape = SharedOptions.Files(new Argument<string>("FILE") { Description = "A tape (.dst)." });
        var picture = SharedOptions.Picture("Also draw every stitch, as .svg or .png.");
        var format = SharedOptions.Format();
        var command = new ExampleCommand(
            "inspect",
            "Show what a tape holds.",
            "splitter inspect part-A.dst",
            "splitter inspect part-A.dst --picture part-A.png"
        )
        {
            tape,
            picture,
            format,
        };
        command.SetAction(call =>
            Run(call.GetRequiredValue(tape), call.GetValue(picture)).Write(call.GetValue(format), output, error)
        );
        return command;
    }

    private static Answer Run(string file, string? picture)
    {
        var kind = PictureFile.KindOf(picture);
        if (picture is not null && kind is null)
            return Answer.Wrong([CallProblems.PictureKind(picture)]);
        var (bytes, unread) = BoundedFile.Read(file);
        if (unread is not null)
            return Answer.Wrong([CallProblems.CannotRead(file, unread)]);
        var read = TapeReport.Read(file, bytes);
        if (!read.TryGet(out var report))
            return Answer.Wrong(read.Diagnostics);
        if (
            picture is not null
            && PictureFile.Write(picture, kind == OutputKind.Svg ? report.ToSvg() : report.ToPng()) is { } problem
        )
            return Answer.Wrong([.. read.Diagnostics, problem]);
        var summary = TapeSummary.Of(report);
        return new(ExitCode.Done, read.Diagnostics) { Text = summary.ToText(), Data = summary };
    }
}
