using Splitter.Planning.Fit;

namespace Splitter.Planning.Order;

/// <summary>
/// The best of all orders and donors, by branch and bound. Misfits of fields that are in do not change when others
/// follow, so a part of an order is given up as soon as it is no better than the best whole one.
/// </summary>
internal sealed class ExactOrder
{
    /// <summary>Plans of more fields have too many orders.</summary>
    internal const int MostFields = 7;

    /// <summary>
    /// Work after which the search ends with the best found so far: reached only where nearly all of seven fields lie
    /// over each other. About half a second.
    /// </summary>
    private const long MostWork = 300_000_000;

    private readonly OrderTask task;
    private readonly PartialOrder partial;

    /// <summary>
    /// For each field the least misfit with any other that its own setting alone leaves at their seam.
    /// </summary>
    private readonly double[] least;

    private FoundOrder best;

    private ExactOrder(OrderTask task, FoundOrder known)
    {
        this.task = task;
        best = known;
        partial = new(task);
        least = new double[task.Count * task.Count];
        for (var a = 0; a < task.Count; a++)
        for (var b = 0; b < task.Count; b++)
            least[(a * task.Count) + b] = Math.Min(Alone(a, b), Alone(b, a));
    }

    /// <param name="known">Some order, the better the quicker.</param>
    internal static FoundOrder Search(OrderTask task, FoundOrder known)
    {
        var search = new ExactOrder(task, known);
        search.Extend();
        return search.best;
    }

    private void Extend()
    {
        if (partial.Order.Count == task.Count)
        {
            if (partial.Score < best.Score)
                best = FoundOrder.Of(partial);
            return;
        }
        var count = partial.Order.Count;
        var last = partial.Order[^1];
        for (var field = 0; field < task.Count; field++)
        {
            if (partial.Holds(field))
                continue;
            foreach (var donors in task.DonorSets(field, partial.Holds))
            {
                // Two neighbours in the order that have nothing to do with each other stand in ascending order: the
                // other way round is the same plan.
                if (count > 1 && field < last && !donors.Contains(last))
                    continue;
                if (partial.Work > MostWork)
                    return;
                partial.Add(field, donors);
                if (Bound() < best.Score)
                    Extend();
                partial.Keep(count);
            }
        }
    }

    /// <summary>No order that begins like this is better.</summary>
    private Score Bound()
    {
        var score = partial.Score;
        for (var a = 0; a < task.Count; a++)
        for (var b = a + 1; b < task.Count; b++)
            if (!partial.Holds(a) || !partial.Holds(b))
            {
                var rest = least[(a * task.Count) + b];
                score = score.Joined(new(rest, rest, 0));
            }
        return score;
    }

    /// <summary>
    /// The misfit that the later of two fields brings to their seam by its own setting, with its best donors.
    /// </summary>
    private double Alone(int later, int earlier)
    {
        var meeting = task.Meeting(later, earlier);
        if (meeting.IsEmpty || later == task.First)
            return meeting.IsEmpty ? 0 : double.PositiveInfinity;
        return task.DonorSets(later, _ => true)
            .Select(set => task.Ideal(later, set).Select(c => c.At).ToArray())
            .Select(corners => meeting.Max(at => CornerFit.Variance(corners, task.Rules.Accuracy, at)))
            .DefaultIfEmpty(double.PositiveInfinity)
            .Min();
    }
}
