using System.Text;
using Splitter.Diagnostics;
using Splitter.Recipes.Keys;
using Splitter.Recipes.Language;
using Splitter.Recipes.Yaml;

namespace Splitter.Starting;

/// <summary>A width as a call gives it, which is one that a recipe can have.</summary>
internal static class FinishedWidth
{
    internal static Result<int> Read(string text, Place call)
    {
        if (Quantity.TryParse(text, out var bare) && bare.Unit.Length == 0)
            return Result.Fail<int>(RecipeValueProblems.WidthWithoutUnit(call, text));
        var reading = new Reading("width");
        var key = ArtworkKeys.Width;
        var node = YamlLoader.Load(reading.File, Encoding.UTF8.GetBytes(YamlText.Quoted(text)), reading.Problems);
        return node is not null && key.ReadValue(new(node, key.Name, key, reading)) is int width
            ? Result.Of(width)
            : Result.Fail<int>([.. reading.Problems.Select(problem => problem with { Place = call })]);
    }
}
