using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Planning.Fields;
using Splitter.Planning.Seams;
using Splitter.Recipes;

namespace Splitter.Planning.Order;

/// <summary>The order in which fields are sewn, and which sewn one gives each its corners.</summary>
/// <param name="Order">For each place in the order the index of the field.</param>
/// <param name="Donors">For each place in the order the place of its donor; null for the first.</param>
internal sealed record Sequence(ImmutableArray<int> Order, ImmutableArray<int?> Donors)
{
    /// <summary>The hoopings from one back to the first, itself included: each is set by corners of the next.</summary>
    internal IEnumerable<int> Chain(int hooping)
    {
        for (int? at = hooping; at is { } place; at = Donors[place])
            yield return place;
    }
}

/// <summary>
/// Errors add up along the chain of hoopings: from the middle (or from the field that holds the folds) outwards, next is
/// always the field that can be set with the least error since the first, by the neighbour that makes it so (Dijkstra
/// 1959, with squared errors as lengths).
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
        var fields = layout.Fields;
        var order = new List<int> { First(recipe, drawing, layout) };
        var donors = new List<int?> { null };
        var errors = new List<double> { 0 };
        while (order.Count < fields.Length)
        {
            var next = Enumerable
                .Range(0, fields.Length)
                .Where(field => !order.Contains(field))
                .SelectMany(field => Enumerable.Range(0, order.Count).Select(place => (Field: field, Donor: place)))
                .Where(link => CommonGround.Suffices(Common(link), recipe.Registration))
                .OrderBy(link => errors[link.Donor] + Error(link))
                .ThenBy(link => (link.Donor, link.Field))
                .Cast<(int Field, int Donor)?>()
                .FirstOrDefault();
            if (next is not { } link)
                return Result.Fail<Sequence>([.. Unreached(recipe, layout, order)]);
            order.Add(link.Field);
            donors.Add(link.Donor);
            errors.Add(errors[link.Donor] + Error(link));
        }
        return Result.Of(new Sequence([.. order], [.. donors]));

        Box Common((int Field, int Donor) link) => fields[link.Field].Usable.Common(fields[order[link.Donor]].Usable);

        double Error((int Field, int Donor) link) => FarthestError(Common(link), fields[link.Field].Usable);
    }

    /// <summary>
    /// Squared error at the receiver's farthest corner, in squared errors of setting one corner: two corners as far apart
    /// as the common ground allows, by the formula that <see cref="Marks.PredictedFit"/> names. Where corners really find
    /// room is not known before seams are.
    /// </summary>
    internal static double FarthestError(Box common, Box receiver)
    {
        var apart = new Point(common.Left, common.Top).DistanceTo(new(common.Right, common.Bottom));
        double x = Math.Max(common.Centre.X - receiver.Left, receiver.Right - common.Centre.X);
        double y = Math.Max(common.Centre.Y - receiver.Top, receiver.Bottom - common.Centre.Y);
        return 0.5 * (1 + (((x * x) + (y * y)) / (apart * apart / 2)));
    }

    private static int First(Recipe recipe, Drawing drawing, Layout layout)
    {
        var middle = drawing.Bounds.Centre;
        var held = FirstField.Held(recipe, middle);
        return Enumerable
            .Range(0, layout.Fields.Length)
            .Where(i => held is not { } box || layout.Fields[i].Usable.Contains(box))
            .OrderBy(i => layout.Fields[i].Centre.DistanceTo(middle))
            .ThenBy(i => i)
            .First();
    }

    private static IEnumerable<Diagnostic> Unreached(Recipe recipe, Layout layout, List<int> reached) =>
        from i in Enumerable.Range(0, layout.Fields.Length)
        where !reached.Contains(i)
        select PlanProblems.FieldOutOfReach(
            recipe.PlaceOf("fields.place"),
            layout.Fields[i],
            CommonGround.Narrowest(recipe.Registration),
            CommonGround.Longest
        );
}
