using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Planning.Fields;
using Splitter.Recipes;
using static System.FormattableString;

namespace Splitter.Planning.Drafting;

/// <summary>Says which hoopings are hardly worth it, and what in the recipe makes them so.</summary>
internal static class YieldRemarks
{
    internal static IEnumerable<Diagnostic> Of(Recipe recipe, Drawing drawing, PlanDraft draft)
    {
        var (placed, yields) = (FieldPlacer.Placed(recipe, drawing, draft.Hoop), Yields.Of(drawing, draft.Division));
        foreach (var problem in LeftOut(recipe, drawing, draft, placed))
            yield return problem;
        var most = yields.MaxBy(y => y.Thread);
        for (var i = 0; i < yields.Length; i++)
        {
            var field = draft.Layout.Fields[i];
            var byHand = placed.FirstOrDefault(p => p.Field == field && p.Place is not null).Place;
            if (yields[i].IsNothing)
                yield return SewsNothing(recipe, draft, i, byHand);
            else if (yields[i].IsLittleBeside(most))
            {
                var (place, advice) = Remedy(
                    recipe,
                    i,
                    byHand,
                    "move this field onto more of the artwork, or leave it out and let others sew that",
                    "move what it sews nearer to the rest, leave that out, or take a larger hoop"
                );
                yield return FieldProblems.HoopingSewsLittle(place, Letters.Of(i), field, yields[i].Thread, advice);
            }
        }
    }

    private static Diagnostic SewsNothing(Recipe recipe, PlanDraft draft, int hooping, Place? byHand)
    {
        var field = draft.Layout.Fields[hooping];
        var receivers = string.Join(
            ", ",
            draft
                .Corners.Where(c => c.Donor == hooping)
                .SelectMany(c => c.Receivers)
                .Distinct()
                .Order()
                .Select(Letters.Of)
        );
        var (place, advice) =
            receivers.Length == 0
                ? Remedy(recipe, hooping, byHand, "leave it out", "take a larger hoop")
                : Remedy(
                    recipe,
                    hooping,
                    byHand,
                    "lay others so that they share ground, and leave this one out",
                    $"take a larger hoop, or move what is sewn by {receivers} nearer to the rest"
                );
        return hooping == 0 && recipe.Fields.First is { } first && byHand is null
            ? FieldProblems.FirstSewsNothing(place, first, field, advice)
            : FieldProblems.HoopingSewsNothing(place, Letters.Of(hooping), field, receivers, advice);
    }

    /// <summary>Fields of the recipe that are not in the plan, since they would sew nothing.</summary>
    private static IEnumerable<Diagnostic> LeftOut(
        Recipe recipe,
        Drawing drawing,
        PlanDraft draft,
        IReadOnlyList<(Field Field, Place? Place)> placed
    )
    {
        var there = draft.Layout.Fields.ToList();
        var missing = placed.Where(p => !there.Remove(p.Field)).ToList();
        foreach (var (field, place) in missing)
            if (place is { } line)
                yield return FieldProblems.FieldLeftOut(line, field, drawing.Bounds);
        if (missing.Where(m => m.Place is null).Select(m => m.Field).ToList() is { Count: > 0 } ofGrid)
            yield return FieldProblems.GridFieldsLeftOut(recipe.PlaceOf("fields.place"), ofGrid);
    }

    /// <summary>The key that makes a hooping so, and what to write instead.</summary>
    /// <param name="laid">What to do with a field that a person laid.</param>
    /// <param name="chosen">What to do where no key of the recipe makes it so.</param>
    private static (Place Place, string Advice) Remedy(
        Recipe recipe,
        int hooping,
        Place? byHand,
        string laid,
        string chosen
    )
    {
        var fields = recipe.Fields;
        if (byHand is { } line)
            return (line, laid);
        if (hooping == 0 && fields.First is not null)
            return (
                recipe.PlaceOf("fields.first"),
                "write a point further into the artwork, or leave out 'fields.first'"
            );
        if (hooping == 0 && Folds.Crossing(recipe.Cloth) is not null)
            return (
                recipe.PlaceOf("cloth.folds"),
                "let the folds cross where more is drawn, or lay the cloth by marks of your own and leave out "
                    + "'cloth.folds'"
            );
        if (fields.Place is GridFields grid)
            return (
                recipe.PlaceOf("fields.place"),
                Invariant($"write other numbers than {grid.Columns} and {grid.Rows} for 'columns' and ")
                    + "'rows', another 'turn', or list the fields by hand"
            );
        if (!fields.Fixed.IsEmpty)
            return (
                recipe.PlaceOf("fields.fixed"),
                "move the fixed fields so that they leave no remnants, or leave one out"
            );
        return fields.First is null
            ? (recipe.PlaceOf("fields.place"), chosen)
            : (recipe.PlaceOf("fields.first"), "write another point under 'fields.first', or leave it out");
    }
}
