using System.Collections.Immutable;
using System.CommandLine;
using Splitter.Checking.Inspecting;
using Splitter.Diagnostics;
using Splitter.Outputs;
using Splitter.Recipes;

namespace Splitter.Tool.Commands;

/// <summary><c>splitter inspect</c>: what a tape holds, whoever made it.</summary>
internal static class InspectCommand
{
    private static readonly ImmutableArray<(string Word, TapeView View)> Views =
    [
        ("thread", TapeView.Thread),
        ("penetrations", TapeView.Penetrations),
        ("density", TapeView.Density),
    ];

    internal static Command Create(TextWriter output, TextWriter error)
    {
        var tape = SharedOptions.Files(new Argument<string>("FILE") { Description = "A machine file (.dst)." }, ".dst");
        var picture = SharedOptions.Picture(
            "Also draw it in true scale: into such a file, or into a folder in every way, as .svg and .png.",
            "FOLDER|FILE"
        );
        var view = View();
        var format = SharedOptions.Format();
        var command = new ExampleCommand(
            "inspect",
            "Show what a machine file holds, and where most thread lies.",
            "splitter inspect examples/parts/lighthouse-bay/small/part-A.dst",
            "splitter inspect examples/parts/lighthouse-bay/small/part-A.dst --picture /tmp/part-A.png",
            "splitter inspect examples/parts/lighthouse-bay/small/part-A.dst --picture /tmp/hard-spots.svg "
                + "--as density",
            "splitter inspect examples/parts/lighthouse-bay/small/part-A.dst --picture /tmp/part-A"
        )
        {
            tape,
            picture,
            view,
            format,
        };
        command.SetAction(call =>
            Run(new(call.GetRequiredValue(tape), call.GetValue(picture), call.GetValue(view)))
                .Write(call.GetValue(format), output, error)
        );
        return command;
    }

    private static Option<TapeView?> View()
    {
        var view = new Option<TapeView?>("--as")
        {
            Description =
                "What the picture shows: thread as it lies; penetrations, moves and trims; or density, layers "
                + "of thread on each mm². Without it: thread, or all of them into a folder.",
            HelpName = string.Join('|', Views.Select(v => v.Word)),
            CustomParser = result =>
            {
                var text = result.Tokens.Count == 1 ? result.Tokens[0].Value : "";
                foreach (var (word, view) in Views)
                    if (word == text)
                        return view;
                result.AddError($"'--as' takes thread, penetrations or density, not '{text}'.");
                return null;
            },
        };
        view.CompletionSources.Clear();
        view.CompletionSources.Add([.. Views.Select(v => v.Word)]);
        return view;
    }

    /// <param name="Picture">Where to draw it; null for nowhere.</param>
    /// <param name="View">What to draw; null for what is usual.</param>
    private sealed record InspectCall(string File, string? Picture, TapeView? View);

    private static Answer Run(InspectCall call)
    {
        if (call is { View: not null, Picture: null })
            return Answer.Wrong([CallProblems.ViewWithoutPicture()]);
        // A name that ends like a file of another kind is a mistake; any other is a folder.
        if (call.Picture is { } path && PictureFile.KindOf(path) is null && Path.HasExtension(path))
            return Answer.Wrong([CallProblems.PictureKind(path)]);
        var (bytes, unread) = BoundedFile.Read(call.File);
        if (unread is not null)
            return Answer.Wrong([CallProblems.CannotRead(call.File, unread)]);
        var read = TapeReport.Read(call.File, bytes, ManifestBeside(call.File));
        if (!read.TryGet(out var report))
            return Answer.Wrong(read.Diagnostics);
        if (call.Picture is { } place && Draw(place, report, call.View) is { } problem)
            return Answer.Wrong([.. read.Diagnostics, problem]);
        var summary = TapeSummary.Of(report);
        return new(ExitCode.Done, read.Diagnostics) { Text = summary.ToText(), Data = summary };
    }

    private static byte[]? ManifestBeside(string file)
    {
        var (bytes, unread) = BoundedFile.Read(
            Path.Combine(Path.GetDirectoryName(file) ?? "", ManifestWriter.FileName)
        );
        return unread is null ? bytes : null;
    }

    private static Diagnostic? Draw(string place, TapeReport report, TapeView? asked)
    {
        if (PictureFile.KindOf(place) is { } kind)
            return PictureFile.Write(place, report.Draw(asked ?? TapeView.Thread, kind));
        var name = Path.GetFileNameWithoutExtension(report.Name);
        return Views
            .Where(v => asked is null || asked == v.View)
            .SelectMany(v =>
                new[] { (".svg", OutputKind.Svg), (".png", OutputKind.Png) }.Select(of =>
                    PictureFile.WriteInto(place, new($"{name}-{v.Word}{of.Item1}", report.Draw(v.View, of.Item2)))
                )
            )
            .FirstOrDefault(problem => problem is not null);
    }
}
