using System.CommandLine;
using System.CommandLine.Completions;
using Splitter.Recipes;

namespace Splitter.Tool.Commands;

/// <summary>Hoops that the recipes of a call have, for shells that complete it.</summary>
internal static class HoopCompletions
{
    /// <param name="recipes">What the call names its recipes by.</param>
    /// <param name="others">Words that stand for hoops.</param>
    internal static Func<CompletionContext, IEnumerable<CompletionItem>> For(
        Argument recipes,
        params string[] others
    ) =>
        context =>
        {
            var named =
                context.ParseResult.GetResult(recipes)?.Tokens.Select(token => Hoops(token.Value)).ToList() ?? [];
            // A hoop that one of several recipes lacks would be an error.
            var common = named.Count == 0 ? [] : named.Aggregate((one, other) => one.Intersect(other));
            return common
                .Concat(others)
                .Where(name => name.StartsWith(context.WordToComplete, StringComparison.Ordinal))
                .Select(name => new CompletionItem(name));
        };

    /// <summary>None of a file that is no recipe: a shell asks while a person types.</summary>
    private static IEnumerable<string> Hoops(string file) =>
        new RecipeFile(file).Load(null, 1).TryGet(out var request)
        && RecipeReader.Read(request.File, request.Bytes, request.Read).TryGet(out var recipe)
            ? recipe.Hoops.Select(hoop => hoop.Name)
            : [];
}
