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
    /// <param name="blocks">No more than <see cref="RecipeKeys.MostThreads"/>: there are twice as many colours.</param>
    internal static ImmutableArray<NamedThread> Proposed(ImmutableArray<NamedThread> known, int blocks)
    {
        var proposed = known.Take(blocks).ToList();
        for (int shade = 0, number = proposed.Count; proposed.Count < blocks; shade++)
        {
            var colour = Colour(shade);
            if (proposed.Exists(t => t.Color == colour))
                continue;
            string name;
            do name = FormattableString.Invariant($"block {++number}");
            while (proposed.Exists(t => t.Name.Equals(name, StringComparison.OrdinalIgnoreCase)));
            proposed.Add(new(name, colour));
        }
        return [.. proposed];
    }

    private static SewThread Spool(NamedThread thread) => new(thread.Name, thread.Color);

    /// <summary>
    /// One of many that differ: the golden ratio spreads them, in whole 2^-16 of a circle, so that all machines agree.
    /// </summary>
    private static string Colour(int number)
    {
        var at = (number * 40_503) & 0xFFFF;
        return FormattableString.Invariant($"#{Channel(at):x2}{Channel(at + 21_845):x2}{Channel(at + 43_690):x2}");

        // Up and down again once around the circle, between dark and light.
        static int Channel(int at) => 40 + (Math.Abs(((at & 0xFFFF) * 2) - 0x10000) * 175 / 0x10000);
    }
}
