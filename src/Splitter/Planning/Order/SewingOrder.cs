using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Planning.Fields;
using Splitter.Planning.Seams;
using Splitter.Recipes;

namespace Splitter.Planning.Order;

/// <summary>
/// Errors add up from hooping to hooping. From the middle (or from the field that holds the folds) outwards, fields are
/// sewn in the order, and take corners from those of the sewn ones, by which the worst seam is predicted to meet best.
/// </summary>
internal static class SewingOrder
{
    /// <param name="crossings">Where straight seams would run through cut shapes.</param>
    internal static Result<Sequence> Choose(
        Recipe recipe,
        Drawing drawing,
        Layout layout,
        ImmutableArray<Crossing> crossings
    )
    {
        var middle = drawing.Bounds.Centre;
        // Where no field holds what the first one must, no layout gets here.
        var first = FirstField.Among(layout.Fields, FirstField.Held(recipe, middle), middle)!.Value;
        var task = new OrderTask(recipe, layout, crossings, first);
        if (OrderSearch.Search(task) is not { } found)
            return Result.Fail<Sequence>([.. Unreached(recipe, layout, task)]);
        if (task.Count <= ExactOrder.MostFields)
            found = ExactOrder.Search(task, found);
        found = LayerRank.Kept(drawing, layout, found);
        return Result.Of(
            new Sequence(
                found.Fields,
                [.. found.Donors.Select(d => d.Select(f => found.Fields.IndexOf(f)).Order().ToImmutableArray())]
            )
        );
    }

    private static IEnumerable<Diagnostic> Unreached(Recipe recipe, Layout layout, OrderTask task)
    {
        var reached = new SortedSet<int> { task.First };
        while (Next() is { } next)
            reached.Add(next);
        return from i in Enumerable.Range(0, task.Count)
            where !reached.Contains(i)
            select PlanProblems.FieldOutOfReach(
                recipe.PlaceOf("fields.place"),
                layout.Fields[i],
                CommonGround.Least(recipe.Registration),
                CommonGround.Longest
            );

        int? Next() =>
            Enumerable
                .Range(0, task.Count)
                .Where(i => !reached.Contains(i) && task.DonorSets(i, reached.Contains).Any())
                .Cast<int?>()
                .FirstOrDefault();
    }
}
