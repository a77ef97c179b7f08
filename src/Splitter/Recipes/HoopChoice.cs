using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Recipes.Language;

namespace Splitter.Recipes;

/// <summary>Which hoops of a recipe are asked for.</summary>
internal static class HoopChoice
{
    /// <summary>Stands for every hoop in a call.</summary>
    internal const string All = HoopNameKind.All;

    /// <summary>
    /// The hoop of that name, or all of them for null and for <c>all</c>, which no hoop may be called; an unknown name
    /// is an error that lists the known ones.
    /// </summary>
    internal static Result<ImmutableArray<Hoop>> Choose(Recipe recipe, string? name)
    {
        if (name is null or All)
            return Result.Of(recipe.Hoops);
        return recipe.Hoops.FirstOrDefault(h => h.Name == name) is { } hoop
            ? Result.Of(ImmutableArray.Create(hoop))
            : Result.Fail<ImmutableArray<Hoop>>(
                RecipeProblems.UnknownHoop(recipe.PlaceOf("hoops"), name, [.. recipe.Hoops.Select(h => h.Name)])
            );
    }

    /// <summary>The one hoop that is asked for.</summary>
    /// <param name="call">Where it is asked for.</param>
    internal static Result<Hoop> One(ImmutableArray<Hoop> hoops, Place call) =>
        hoops is [var one]
            ? Result.Of(one)
            : Result.Fail<Hoop>(CorrectionProblems.WhichHoop(call, hoops.Select(h => h.Name)));
}
