using Splitter.Diagnostics;
using Splitter.Recipes.Including;
using Splitter.Recipes.Keys;
using Splitter.Recipes.Language;
using Splitter.Recipes.Yaml;

namespace Splitter.Recipes;

/// <summary>
/// YAML to <see cref="Recipe"/>, strict: bytes become text, text a tree of nodes (<see cref="YamlLoader"/>), and the
/// tree a recipe by the table of keys (<see cref="RecipeKeys"/>). Every mistake of a file is reported in one run.
/// </summary>
internal static class RecipeReader
{
    /// <param name="read">How to reach the files that it includes; null when there are none.</param>
    internal static Result<Recipe> Read(string file, ReadOnlyMemory<byte> bytes, ReadSource? read = null)
    {
        var reading = new Reading(file);
        var includes = new Includes(reading, read ?? (_ => new(default, "does not exist")));
        var root = YamlLoader.Load(file, bytes.Span, reading.Problems);
        var recipe = root is null ? default(Refused) : Read(root, reading, includes);
        return recipe.Has && reading.Problems.Count == 0
            ? Result.Of(recipe.Value with { Included = includes.Read })
            : Result<Recipe>.Failed(RecipeFileProblems.Foremost(reading.Problems));
    }

    private static Maybe<Recipe> Read(Node root, Reading reading, Includes includes)
    {
        var given = new Given(root, "", Whole, reading);
        if (root is not MappingNode mapping)
            return given.Refuse(RecipeFileProblems.NotARecipe(root.Place));

        if (OtherVersion(mapping) is { } other)
            return given.Refuse(other);
        var before = reading.Problems.Count;
        var whole = includes.Expand(mapping);
        // What the recipe seems to lack may stand in a file that could not be read.
        return reading.Problems.Count > before ? default(Refused) : RecipeKeys.Group.Read(given with { Node = whole });
    }

    /// <summary>What a later version means by its keys is not ours to judge.</summary>
    internal static Diagnostic? OtherVersion(MappingNode mapping) =>
        mapping.Entries.FirstOrDefault(e => e.Key == RecipeKeys.Splitter.Name)?.Value is ScalarNode said
        && Quantity.TryParse(said.Text, out var version)
        && version.Unit.Length == 0
        && version.Number != RecipeKeys.Version
            ? RecipeValueProblems.OtherVersion(said.Place, said.Text, RecipeKeys.Version)
            : null;

    private static readonly Key<Recipe> Whole = new("recipe", RecipeKeys.Group)
    {
        Says = "A recipe.",
        Example = "see the keys",
    };
}
