using Splitter.Diagnostics;
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
    internal static Result<Recipe> Read(string file, ReadOnlyMemory<byte> bytes)
    {
        var reading = new Reading(file);
        var root = YamlLoader.Load(file, bytes.Span, reading.Problems);
        var recipe = root is null ? default(Refused) : Read(root, reading);
        return recipe.Has && reading.Problems.Count == 0
            ? Result.Of(recipe.Value)
            : Result<Recipe>.Failed(RecipeFileProblems.Foremost(reading.Problems));
    }

    private static Maybe<Recipe> Read(Node root, Reading reading)
    {
        var given = new Given(root, "", Whole, reading);
        if (root is not MappingNode mapping)
            return given.Refuse(RecipeFileProblems.NotARecipe(root.Place));

        // What a later version means by its keys is not ours to judge.
        var version = mapping.Entries.FirstOrDefault(e => e.Key == RecipeKeys.Splitter.Name)?.Value as ScalarNode;
        return version is not null && OtherVersion(version.Text)
            ? given.Refuse(RecipeValueProblems.OtherVersion(version.Place, version.Text, RecipeKeys.Version))
            : RecipeKeys.Group.Read(given);
    }

    private static bool OtherVersion(string text) =>
        Quantity.TryParse(text, out var version) && version.Unit.Length == 0 && version.Number != RecipeKeys.Version;

    private static readonly Key<Recipe> Whole = new("recipe", RecipeKeys.Group)
    {
        Says = "A recipe.",
        Example = "see the keys",
    };
}
