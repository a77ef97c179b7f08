using System.CommandLine;
using System.CommandLine.Parsing;
using Splitter.Recipes;

namespace Splitter.Tool.Commands;

/// <summary>How an answer is written.</summary>
internal enum AnswerFormat
{
    /// <summary>For a person.</summary>
    Text,

    /// <summary>One JSON document, for a program.</summary>
    Json,

    /// <summary>SARIF 2.1.0, for tools of reviewers.</summary>
    Sarif,
}

/// <summary>Options and arguments that several commands have; each command gets its own.</summary>
internal static class SharedOptions
{
    private static readonly string[] RecipeEndings = [".yaml", ".yml"];

    internal static Argument<string[]> Recipes() =>
        Files(
            new Argument<string[]>("RECIPE")
            {
                Description = "A recipe file; several are done together.",
                Arity = ArgumentArity.OneOrMore,
            },
            RecipeEndings
        );

    internal static Argument<string> Recipe() =>
        Files(new Argument<string>("RECIPE") { Description = "A recipe file." }, RecipeEndings);

    /// <summary>An option that a command does not have must not be taken for a file.</summary>
    /// <param name="endings">What completion offers, beside folders.</param>
    internal static T Files<T>(T argument, params string[] endings)
        where T : Argument
    {
        argument.Validators.Add(result =>
        {
            foreach (var token in result.Tokens.Where(t => t.Value.StartsWith('-')))
                result.AddError($"There is no option '{token.Value}'; a file of that name is './{token.Value}'.");
        });
        argument.Validators.Add(RefuseNothing);
        argument.CompletionSources.Add(FileCompletions.For(endings));
        // Help would list what completion offers: the files of wherever one happens to be.
        argument.HelpName = argument.Name;
        return argument;
    }

    /// <summary>A name of no letters names no file.</summary>
    internal static void RefuseNothing(SymbolResult result)
    {
        if (result.Tokens.Any(t => t.Value.Length == 0))
            result.AddError("A file's name is empty.");
    }

    /// <param name="recipes">Whose hoops completion offers.</param>
    internal static Option<string?> Hoop(Argument recipes)
    {
        var hoop = new Option<string?>("--hoop")
        {
            Description = "One of the recipe's hoops, or 'all'. Without it: every hoop.",
            HelpName = "NAME|all",
        };
        hoop.CompletionSources.Add(HoopCompletions.For(recipes, HoopChoice.All));
        return hoop;
    }

    internal static Option<string?> Picture(string description, string what) =>
        new("--picture") { Description = description, HelpName = what };

    internal static Option<string?> List(string name, string which) =>
        new(name)
        {
            Description = $"Write to FILE the paths of all files {which}, one a line, for a build tool.",
            HelpName = "FILE",
        };

    internal static Option<string?> Out() =>
        new("--out")
        {
            Description = "Folder to use instead of the recipe's output.folder; each hoop has a folder in it.",
            HelpName = "FOLDER",
        };

    internal static Option<bool> Watch() =>
        new("--watch")
        {
            Description =
                "Do it again whenever the recipe, a file that it includes or its artwork is written, until Ctrl+C.",
        };

    /// <summary>More threads than this help nothing, and PLINQ takes 512 at most.</summary>
    private const int MostJobs = 256;

    internal static Option<int?> Jobs()
    {
        var jobs = new Option<int?>("--jobs")
        {
            Description = "How many threads may work; the files do not depend on it. Without it: one a processor.",
            HelpName = "N",
            CustomParser = result =>
            {
                var text = result.Tokens.Count == 1 ? result.Tokens[0].Value : "";
                if (int.TryParse(text, out var count) && count is >= 1 and <= MostJobs)
                    return count;
                result.AddError($"'--jobs' takes a whole number from 1 to {MostJobs}, not '{text}'.");
                return 1;
            },
        };
        return jobs;
    }

    internal static Option<AnswerFormat> Format(bool withSarif = false)
    {
        var words = withSarif ? "text, json or sarif" : "text or json";
        var format = new Option<AnswerFormat>("--format")
        {
            Description =
                "How the answer is written: text for a person, json for a "
                + $"program{(withSarif ? ", sarif for reviewing tools" : "")}.",
            HelpName = withSarif ? "text|json|sarif" : "text|json",
            CustomParser = result =>
            {
                var text = result.Tokens.Count == 1 ? result.Tokens[0].Value : "";
                if (text == "json")
                    return AnswerFormat.Json;
                if (text == "sarif" && withSarif)
                    return AnswerFormat.Sarif;
                if (text != "text")
                    result.AddError($"'--format' takes {words}, not '{text}'.");
                return AnswerFormat.Text;
            },
        };
        format.CompletionSources.Clear();
        format.CompletionSources.Add(withSarif ? ["text", "json", "sarif"] : ["text", "json"]);
        return format;
    }
}
