using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Recipes;

namespace Splitter.Artwork.Tapes;

/// <summary>A tape has no colours: the recipe's threads sew its colour blocks, in their order.</summary>
internal static class BlockThreads
{
    /// <summary>For each colour block its thread.</summary>
    internal static Result<ImmutableArray<SewThread>> Of(Recipe recipe, int blocks) =>
        recipe.Threads.Length == blocks
            ? Result.Of<ImmutableArray<SewThread>>([.. recipe.Threads.Select(t => new SewThread(t.Name, t.Color))])
            : Result.Fail<ImmutableArray<SewThread>>(
                StitchedProblems.OtherThreads(
                    recipe.PlaceOf("threads"),
                    recipe.Threads.Length,
                    Proposed(recipe, blocks)
                )
            );

    /// <summary>Those that the recipe has, and others for the blocks that have none.</summary>
    private static ImmutableArray<NamedThread> Proposed(Recipe recipe, int blocks)
    {
        var proposed = recipe.Threads.Take(blocks).ToList();
        for (var (block, shade) = (proposed.Count + 1, 0); proposed.Count < blocks; shade++)
        {
            var (name, colour) = (FormattableString.Invariant($"block {block}"), Colour(shade));
            if (proposed.Exists(t => t.Color == colour))
                continue;
            proposed.Add(new(name, colour));
            block++;
        }
        return [.. proposed];
    }

    /// <summary>
    /// One of many that differ: the golden ratio spreads them, in whole 2^-16 of a circle, so that all machines agree.
    /// </summary>
    internal static string Colour(int number)
    {
        var at = (number * 40_503) & 0xFFFF;
        return FormattableString.Invariant($"#{Channel(at):x2}{Channel(at + 21_845):x2}{Channel(at + 43_690):x2}");

        // Up and down again once around the circle, between dark and light.
        static int Channel(int at) => 40 + (Math.Abs(((at & 0xFFFF) * 2) - 0x10000) * 175 / 0x10000);
    }
}
