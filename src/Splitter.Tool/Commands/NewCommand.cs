using System.Collections.Immutable;
using System.CommandLine;
using System.Text;
using Splitter.Diagnostics;
using Splitter.Starting;
using Splitter.Tool.Disk;

namespace Splitter.Tool.Commands;

/// <summary><c>splitter new</c>: a first recipe for a drawing.</summary>
internal static class NewCommand
{
    /// <summary>Stands for standard output.</summary>
    private const string Output = "-";

    internal static Command Create(TextWriter output, TextWriter error)
    {
        var artwork = SharedOptions.Files(
            new Argument<string>("ARTWORK") { Description = "A drawing (.svg, .geojson or .json), or a tape (.dst)." },
            ".svg",
            ".geojson",
            ".json",
            ".dst"
        );
        var recipe = new Argument<string?>("RECIPE")
        {
            Description = "Where to write; '-' for standard output. Without it: beside the drawing, as .yaml.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        recipe.Validators.Add(SharedOptions.RefuseNothing);
        var width = new Option<string?>("--width")
        {
            Description =
                "Width of the finished work, such as 300mm or 12in; the height follows. Without it: the drawing's own.",
            HelpName = "LENGTH",
        };
        var force = new Option<bool>("--force") { Description = "Write over a file that is there." };
        var command = new ExampleCommand(
            "new",
            "Start a recipe for a drawing or a tape, with comments; it makes parts as it is.",
            "splitter new examples/artwork/lighthouse-bay.svg bay.yaml",
            "splitter new examples/artwork/lighthouse-bay.svg bay.yaml --width 300mm --force",
            "splitter new examples/artwork/lighthouse-bay.svg -"
        )
        {
            artwork,
            recipe,
            width,
            force,
        };
        command.SetAction(call =>
            Run(new(call.GetRequiredValue(artwork), call.GetValue(recipe), call.GetValue(width), call.GetValue(force)))
                .Write(AnswerFormat.Text, output, error)
        );
        return command;
    }

    /// <summary>Some systems do not tell case apart.</summary>
    private static bool SameFile(string one, string other) =>
        string.Equals(Path.GetFullPath(one), Path.GetFullPath(other), StringComparison.OrdinalIgnoreCase);

    private sealed record NewCall(string Artwork, string? Recipe, string? Width, bool Force);

    private static Result<string> Start(NewCall call, string name, SourceFile artwork) =>
        call.Width is { } given
            ? from width in FinishedWidth.Read(given, CallProblems.Call)
            from text in StarterRecipe.Write(name, artwork, width)
            select text
            : StarterRecipe.Write(name, artwork, null);

    private static Answer Run(NewCall call)
    {
        var (bytes, unread) = BoundedFile.Read(call.Artwork);
        if (unread is not null)
            return Answer.Wrong([CallProblems.CannotRead(call.Artwork, unread)]);
        var file = call.Recipe is null or Output ? Path.ChangeExtension(call.Artwork, ".yaml") : call.Recipe;
        // Not even by force: the drawing is the person's work.
        if (call.Recipe != Output && SameFile(file, call.Artwork))
            return Answer.Wrong([CallProblems.RecipeOverDrawing(file)]);
        if (call is { Recipe: not Output, Force: false } && Path.Exists(file))
            return Answer.Wrong([CallProblems.RecipeThere(file)]);
        var folder = Path.GetDirectoryName(Path.GetFullPath(file))!;
        var named = Path.GetRelativePath(folder, Path.GetFullPath(call.Artwork)).Replace('\\', '/');
        var started = Start(call, Path.GetFileNameWithoutExtension(file), new(named, bytes));
        // The library names the drawing as the recipe does.
        ImmutableArray<Diagnostic> diagnostics =
        [
            .. started.Diagnostics.Select(d =>
                d.Place.File == named ? d with { Place = d.Place with { File = call.Artwork } } : d
            ),
        ];
        if (!started.TryGet(out var written))
            return Answer.Wrong(diagnostics);
        if (call.Recipe == Output)
            return new(ExitCode.Done, diagnostics) { Text = written };
        try
        {
            Directory.CreateDirectory(folder);
            Replace(file, written, call.Force);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            // What there is to say of the drawing is of no use without a recipe.
            return Answer.Wrong([CallProblems.CannotWriteRecipe(file, e.Message)]);
        }
        return new(ExitCode.Done, diagnostics)
        {
            Text =
                $"{file.Replace('\\', '/')} is written; give its hoops the sewing fields that yours have, then "
                + "look at it with 'splitter plan'\n",
        };
    }

    /// <summary>The file that was there stays whole until the new one is.</summary>
    private static void Replace(string file, string text, bool force)
    {
        UnfinishedFile.DeleteLeft(file);
        var whole = UnfinishedFile.Of(file);
        try
        {
            File.WriteAllText(whole, text, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
            File.Move(whole, file, force);
        }
        finally
        {
            // There no more, unless one of the two failed.
            File.Delete(whole);
        }
    }
}
