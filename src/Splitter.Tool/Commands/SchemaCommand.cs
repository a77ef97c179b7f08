using System.CommandLine;
using Splitter.Recipes.Descriptions;

namespace Splitter.Tool.Commands;

/// <summary><c>splitter schema</c>: the language of recipes, for editors or for people.</summary>
internal static class SchemaCommand
{
    internal static Command Create(TextWriter output)
    {
        var form = new Option<string?>("--as")
        {
            Description =
                "What is printed: schema, JSON Schema 2020-12 for editors; or page, a table of all keys as Markdown.",
            HelpName = "schema|page",
            CustomParser = result =>
            {
                var text = result.Tokens.Count == 1 ? result.Tokens[0].Value : "";
                if (text is not ("schema" or "page"))
                    result.AddError($"'--as' takes schema or page, not '{text}'.");
                return text;
            },
        };
        var command = new ExampleCommand(
            "schema",
            "Describe all keys of a recipe, for an editor or on a page.",
            "splitter schema > /tmp/splitter.schema.json",
            "splitter schema --as page"
        )
        {
            form,
        };
        command.SetAction(call =>
        {
            output.Write(call.GetValue(form) == "page" ? ReferencePage.Write() : RecipeSchema.Write());
            return ExitCode.Done;
        });
        return command;
    }
}
