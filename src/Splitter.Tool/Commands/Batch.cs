using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Tool.Disk;

namespace Splitter.Tool.Commands;

/// <summary>One recipe's finished sets, and the folder of each.</summary>
internal sealed record Made(RecipeFile Recipe, Production Production, ImmutableArray<SetFolder> Folders);

/// <summary>Several recipes made in memory, as both make and check do it.</summary>
internal static class Batch
{
    internal static Result<ImmutableArray<Made>> Make(BatchCall call, Progress progress, CancellationToken stop)
    {
        ImmutableArray<RecipeFile> recipes = [.. call.Recipes.Select(given => new RecipeFile(given, call.Seen))];
        var twice = recipes
            .Select((recipe, i) => (Recipe: recipe, First: recipes.Take(i).FirstOrDefault(r => Same(r, recipe))))
            .Where(pair => pair.First is not null)
            .Select(pair => CallProblems.RecipeTwice(pair.Recipe.Given, pair.First!.Given))
            .ToArray();
        if (twice.Length > 0)
            return Result.Fail<ImmutableArray<Made>>(twice);

        var made = new List<Result<Made>>();
        foreach (var recipe in recipes)
        {
            stop.ThrowIfCancellationRequested();
            progress.Say(recipe.Given);
            made.Add(Make(call, recipe));
        }
        return from all in Result.All(made) from clear in WithoutClashes(all) select clear;
    }

    private static bool Same(RecipeFile one, RecipeFile other) =>
        string.Equals(one.FullPath, other.FullPath, StringComparison.Ordinal);

    private static Result<Made> Make(BatchCall call, RecipeFile recipe)
    {
        var made =
            from request in recipe.Load(call.Hoop, call.Jobs)
            from production in Pipeline.Make(request)
            let output = OutputFolder.Of(recipe, production.Job.Recipe.Output, call.Out)
            select new Made(
                recipe,
                production,
                [.. production.Sets.Select(set => new SetFolder(output, set.Plan.Hoop.Name, recipe.FullPath))]
            );
        var diagnostics = recipe.FromHere(made.Diagnostics);
        return made.TryGet(out var value) ? Result.Of(value, diagnostics) : Result.Fail<Made>(diagnostics.AsSpan());
    }

    /// <summary>
    /// Two sets in one folder would each take the other for an earlier run. Some systems do not tell case apart.
    /// </summary>
    private static Result<ImmutableArray<Made>> WithoutClashes(ImmutableArray<Made> all)
    {
        var first = new Dictionary<string, Made>(StringComparer.OrdinalIgnoreCase);
        var clashes = new List<Diagnostic>();
        foreach (var (made, folder) in all.SelectMany(made => made.Folders.Select(folder => (made, folder))))
            if (!first.TryAdd(Path.GetFullPath(folder.Path), made))
                clashes.Add(
                    DiskProblems.SameFolder(
                        made.Recipe.Given,
                        first[Path.GetFullPath(folder.Path)].Recipe.Given,
                        folder.Path
                    )
                );
        return clashes.Count == 0 ? Result.Of(all) : Result.Fail<ImmutableArray<Made>>([.. clashes]);
    }
}
