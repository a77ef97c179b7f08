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
    internal static Result<Sequence> Choose(Recipe recipe, Drawing drawing, Layout layout, Division division)
    {
        var held = FirstField.Held(recipe, drawing.Bounds.Centre);
        var chain = Chained(layout.Fields, recipe.Registration, drawing.Bounds.Centre, held);
        return chain.Order.Count < layout.Fields.Length
            ? Result.Fail<Sequence>([.. Unreached(recipe, layout, chain.Order)])
            : Result.Of(new Sequence([.. chain.Order], [.. chain.Donors]));
    }

    /// <summary>
    /// The largest of the fields' errors when they are sewn in the best order, in squared errors of setting one corner:
    /// what one layout is compared with another by. Without bound when not all can be reached.
    /// </summary>
    /// <param name="held">What the first field has to hold of the folds; null for nothing.</param>
    internal static double WorstError(ImmutableArray<Field> fields, RegistrationRules rules, Point middle, Box? held)
    {
        var chain = Chained(fields, rules, middle, held);
        return chain.Order.Count < fields.Length ? double.PositiveInfinity : chain.Errors.Max();
    }

    private static (List<int> Order, List<int?> Donors, List<double> Errors) Chained(
        ImmutableArray<Field> fields,
        RegistrationRules rules,
        Point middle,
        Box? held
    )
    {
        var order = new List<int>();
        var donors = new List<int?>();
        var errors = new List<double>();
        var least = new (double Error, int? Donor)[fields.Length];
        Array.Fill(least, (double.PositiveInfinity, null));
        var next = First(fields, middle, held);
        least[next] = (0, null);
        while (next >= 0)
        {
            order.Add(next);
            donors.Add(least[next].Donor);
            errors.Add(least[next].Error);
            var (donor, soFar) = (order.Count - 1, least[next].Error);
            for (var field = 0; field < fields.Length; field++)
            {
                if (order.Contains(field))
                    continue;
                var common = fields[field].Usable.Common(fields[next].Usable);
                if (!CommonGround.Suffices(common, rules))
                    continue;
                var error = soFar + FarthestError(common, fields[field].Usable);
                if (error < least[field].Error)
                    least[field] = (error, donor);
            }
            next = Enumerable
                .Range(0, fields.Length)
                .Where(f => !order.Contains(f) && least[f].Error < double.PositiveInfinity)
                .OrderBy(f => least[f].Error)
                .ThenBy(f => (least[f].Donor, f))
                .FirstOrDefault(-1);
        }
        return (order, donors, errors);
    }

    /// <summary>
    /// Squared error at the receiver's farthest corner, in squared errors of setting one corner: two corners as far apart
    /// as the common ground allows, by the formula that <see cref="Marks.PredictedFit"/> names. Where corners really find
    /// room is not known before seams are.
    /// </summary>
    private static double FarthestError(Box common, Box receiver)
    {
        var apart = new Point(common.Left, common.Top).DistanceTo(new(common.Right, common.Bottom));
        double x = Math.Max(common.Centre.X - receiver.Left, receiver.Right - common.Centre.X);
        double y = Math.Max(common.Centre.Y - receiver.Top, receiver.Bottom - common.Centre.Y);
        return 0.5 * (1 + (((x * x) + (y * y)) / (apart * apart / 2)));
    }

    private static int First(ImmutableArray<Field> fields, Point middle, Box? held)
    {
        var holding = Enumerable
            .Range(0, fields.Length)
            .Where(i => held is not { } box || fields[i].Usable.Contains(box));
        return holding.OrderBy(i => fields[i].Centre.DistanceTo(middle)).ThenBy(i => i).FirstOrDefault(0);
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
