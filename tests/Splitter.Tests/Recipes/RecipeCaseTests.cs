using Splitter.Diagnostics;
using Splitter.Recipes;

namespace Splitter.Tests.Recipes;

/// <summary>Wrong recipes with every message they get; right ones with what they come to.</summary>
public class RecipeCaseTests
{
    public static TheoryData<string> Wrong => [.. Golden.Cases("Recipes", "Cases")];

    public static TheoryData<string> Right => [.. Golden.Cases("Recipes", "Readable")];

    [Theory]
    [MemberData(nameof(Wrong))]
    public void A_wrong_recipe_gets_these_messages(string name)
    {
        var folder = Golden.Source("Recipes", "Cases", name);
        var result = Read(folder);

        Assert.False(result.Succeeded);
        Golden.Check(
            Path.Combine(folder, "expected.txt"),
            string.Concat(result.Diagnostics.Select(d => d.ToString() + "\n"))
        );
    }

    [Theory]
    [MemberData(nameof(Right))]
    public void A_right_recipe_comes_to_this(string name)
    {
        var folder = Golden.Source("Recipes", "Readable", name);
        var result = Read(folder);

        Assert.Empty(result.Diagnostics);
        Golden.Check(Path.Combine(folder, "expected.txt"), RecipeDump.Of(result.Value));
    }

    private static Result<Recipe> Read(string folder) =>
        RecipeReader.Read(
            "recipe.yaml",
            File.ReadAllBytes(Path.Combine(folder, "recipe.yaml")),
            path =>
                Path.Combine(folder, path) is var file && File.Exists(file)
                    ? new(File.ReadAllBytes(file), null)
                    : new(default, "does not exist")
        );
}
