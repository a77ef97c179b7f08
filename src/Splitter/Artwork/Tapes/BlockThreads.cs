using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Recipes;
using Splitter.Recipes.Keys;

namespace Splitter.Artwork.Tapes;

/// <summary>
/// A tape has no colours: the recipe's threads sew its colour blocks, in their order, or in that of
/// <see cref="ArtworkSource.Blocks"/>.
/// </summary>
internal static class BlockThreads
{
    /// <summary>For each colour block its thread.</summary>
    internal static Result<ImmutableArray<SewThread>> Of(Recipe recipe, int blocks)
    {
        var names = recipe.Artwork.Blocks;
        if (names.IsEmpty)
            return recipe.Threads.Length == blocks
                ? Result.Of<ImmutableArray<SewThread>>([.. recipe.Threads.Select(Spool)])
                : Result.Fail<ImmutableArray<SewThread>>(
                    StitchedProblems.OtherThreads(
                        recipe.PlaceOf("threads"),
                        recipe.Threads,
                        Proposed(recipe.Threads, blocks)
                    )
                );
        if (names.Length != blocks)
            return Result.Fail<ImmutableArray<SewThread>>(
                StitchedProblems.OtherBlocks(recipe.PlaceOf("artwork.blocks"), names, recipe.Threads, blocks)
            );
        return Result.All(
            names.Select(
                (name, i) =>
                    recipe.Threads.FirstOrDefault(t => t.Name.Equals(name, StringComparison.OrdinalIgnoreCase))
                        is { } thread
                        ? Result.Of(Spool(thread))
                        : Result.Fail<SewThread>(
                            StitchedProblems.UnknownThread(
                                recipe.PlaceOf(FormattableString.Invariant($"artwork.blocks[{i}]")),
                                name,
                                recipe.Threads
                            )
                        )
            )
        );
    }

    /// <summary>
    /// Threads for so many colour blocks: those that are known, and others for the blocks that have none.
    /// </summary>
    /// <param name="blocks">No more than <see cref="RecipeKeys.MostThreads"/>: there are more colours.</param>
    internal static ImmutableArray<NamedThread> Proposed(ImmutableArray<NamedThread> known, int blocks)
    {
        var proposed = known.Take(blocks).ToList();
        var number = proposed.Count;
        foreach (var colour in DistinctColours.Besides(proposed.Select(t => t.Color), blocks - proposed.Count))
        {
            string name;
            do name = FormattableString.Invariant($"block {++number}");
            while (proposed.Exists(t => t.Name.Equals(name, StringComparison.OrdinalIgnoreCase)));
            proposed.Add(new(name, colour));
        }
        return [.. proposed];
    }

    private static SewThread Spool(NamedThread thread) => new(thread.Name, thread.Color);
}
