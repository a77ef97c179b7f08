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
        var (placed, areas) = (FieldPlacer.Placed(recipe, drawing, draft.Hoop), Yields.Of(drawing, draft.Division));
        foreach (var problem in LeftOut(recipe, drawing, draft, placed))
            yield return problem;
        for (var i = 0; i < areas.Length; i++)
        {
            // A small work in one hooping is worth that one.
            if (areas[i] >= Yields.Little || areas.Length == 1)
                continue;
            var field = draft.Layout.Fields[i];
            var byHand = placed.FirstOrDefault(p => p.Field == field && p.Place is not null).Place;
            var (place, advice) = Remedy(recipe, i, byHand, areas[i] < Yields.Nothing);
            yield return areas[i] >= Yields.Nothing
                ? FieldProblems.HoopingSewsLittle(place, Letters.Of(i), field, areas[i], advice)
            : i == 0 && recipe.Fields.First is { } first && byHand is null
                ? FieldProblems.FirstSewsNothing(place, first, field, advice)
            : FieldProblems.HoopingHandsOn(
                place,
                Letters.Of(i),
                field,
                [.. draft.Corners.Where(c => c.Donor == i).SelectMany(c => c.Receivers).Distinct().Order()],
                advice
            );
        }
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
    private static (Place Place, string Advice) Remedy(Recipe recipe, int hooping, Place? byHand, bool isEmpty)
    {
        var fields = recipe.Fields;
        if (byHand is { } line)
            return (
                line,
                isEmpty
                    ? "lay others so that they share ground, and leave this one out"
                    : "move this field onto more of the artwork, or leave it out and let others sew that"
            );
        if (hooping == 0 && fields.First is not null)
            return (
                recipe.PlaceOf("fields.first"),
                "write a point further into the artwork, or leave out 'fields.first'"
            );
        if (hooping == 0 && Folds.Crossing(recipe.Cloth) is not null)
            return (
                recipe.PlaceOf("cloth.folds"),
                "let the folds cross where more is drawn, or lay the cloth by marks of your own and leave out 'cloth.folds'"
            );
        if (fields.Place is GridFields grid)
            return (
                recipe.PlaceOf("fields.place"),
                Invariant(
                    $"write other numbers than {grid.Columns} and {grid.Rows} for 'columns' and 'rows', another 'turn', or list the fields by hand"
                )
            );
        if (!fields.Fixed.IsEmpty)
            return (
                recipe.PlaceOf("fields.fixed"),
                "move the fixed fields so that they leave no remnants, or leave one out"
            );
        return (
            recipe.PlaceOf(fields.First is null ? "fields.place" : "fields.first"),
            fields.First is null
                ? "move what it sews nearer to the rest, leave that out, or take a larger hoop"
                : "write another point under 'fields.first', or leave it out"
        );
    }
}
