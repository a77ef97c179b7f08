using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning.Fit;

namespace Splitter.Planning.Order;

/// <summary>An order as a search builds it, field by field, and takes it apart again from the end.</summary>
internal sealed class PartialOrder
{
    private readonly OrderTask task;
    private readonly int[] placeOf;
    private readonly List<int> order = [];
    private readonly List<ImmutableArray<int>> donors = [];
    private readonly List<Score> scores = [];
    private readonly Poses poses;
    private double[] misfits = [];

    /// <summary>What the field that was added last brought.</summary>
    private Score added;

    internal PartialOrder(OrderTask task)
    {
        this.task = task;
        placeOf = new int[task.Count];
        Array.Fill(placeOf, -1);
        poses = new(task.Count, task.Rules.Accuracy, task.Stretch, task.Layout.Fields[task.First].Centre);
        poses.AddFirst();
        Note(task.First, [], default);
    }

    /// <summary>Fields that are in, in their order.</summary>
    internal IReadOnlyList<int> Order => order;

    /// <summary>For each place the fields that it takes corners from.</summary>
    internal IReadOnlyList<ImmutableArray<int>> Donors => donors;

    /// <summary>Of all fields that are in.</summary>
    internal Score Score => scores[^1];

    /// <summary>How much has been done, in a measure that no clock has a part in.</summary>
    internal long Work => poses.Work;

    internal bool Holds(int field) => placeOf[field] >= 0;

    /// <summary>The next field, set by these.</summary>
    internal void Add(int field, ImmutableArray<int> from)
    {
        var ideal = task.Ideal(field, from);
        Span<TakenCorner> corners = stackalloc TakenCorner[ideal.Length];
        for (var i = 0; i < ideal.Length; i++)
            corners[i] = new(ideal[i].At, placeOf[ideal[i].Donor]);
        var place = order.Count;
        poses.Add(corners);
        var (worst, sum) = (0.0, 0.0);
        for (var other = 0; other < place; other++)
        {
            var most = 0.0;
            foreach (var misfit in Variances(place, other, task.Meeting(field, order[other])))
                most = Math.Max(most, misfit);
            (worst, sum) = (Math.Max(worst, most), sum + most);
        }
        var astray = 0.0;
        foreach (var misfit in Variances(place, 0, task.Ground(field)))
            astray += misfit / 4;
        added = new(worst, sum, astray);
        Note(field, from, scores[^1].Joined(added));
    }

    /// <summary>How far two hoopings miss each other at places; valid until it is asked again.</summary>
    private Span<double> Variances(int place, int other, ImmutableArray<Point> places)
    {
        if (misfits.Length < places.Length)
            misfits = new double[places.Length];
        poses.Variances(place, other, places.AsSpan(), misfits);
        return misfits.AsSpan(0, places.Length);
    }

    /// <summary>Takes away what comes after so many fields.</summary>
    internal void Keep(int count)
    {
        for (var i = order.Count - 1; i >= count; i--)
        {
            placeOf[order[i]] = -1;
            order.RemoveAt(i);
            donors.RemoveAt(i);
            scores.RemoveAt(i);
        }
        poses.Keep(count);
    }

    /// <summary>The donors by which a field meets those that are in best; null when none can set it.</summary>
    internal (ImmutableArray<int> Donors, Score Score)? Best(int field) => Best(Ways(field));

    /// <summary>The best of a field's <see cref="Ways"/>; null when there are none.</summary>
    internal (ImmutableArray<int> Donors, Score Score)? Best(IEnumerable<(ImmutableArray<int> Donors, Score Own)> ways)
    {
        (ImmutableArray<int>, Score)? best = null;
        foreach (var (set, own) in ways)
            if (Score.Joined(own) is var joined && (best is not var (_, least) || joined < least))
                best = (set, joined);
        return best;
    }

    /// <summary>
    /// Every way to set a field, with what it adds to the score: the same for as long as no field comes in that it may
    /// be set by or has a seam with.
    /// </summary>
    internal List<(ImmutableArray<int> Donors, Score Own)> Ways(int field)
    {
        var ways = new List<(ImmutableArray<int>, Score)>();
        foreach (var set in task.DonorSets(field, Holds))
        {
            Add(field, set);
            ways.Add((set, added));
            Keep(order.Count - 1);
        }
        return ways;
    }

    private void Note(int field, ImmutableArray<int> from, Score score)
    {
        placeOf[field] = order.Count;
        order.Add(field);
        donors.Add(from);
        scores.Add(score);
    }
}
