namespace Splitter.Artwork.Columns;

/// <summary>Leaves out the rungs of a column that those before and after them say already.</summary>
internal sealed class RungThinning
{
    /// <summary>
    /// Rungs whose both ends lie this near to where their neighbours would put them are dropped, µm: a tenth of a tape
    /// step.
    /// </summary>
    private const double Tolerance = 10;

    /// <summary>
    /// So many rungs in a row are dropped at most: 200 mm of a straight column or more. Where a column bends slightly
    /// each is looked at again for every one that follows it, and metres of a ribbon would take minutes.
    /// </summary>
    internal const int MostDropped = 2000;

    /// <summary>In order, each with how far along the column it stands.</summary>
    private readonly List<(double At, Rung Rung)> rungs;

    internal RungThinning(IEnumerable<(double At, Rung Rung)> rungs) =>
        this.rungs = [.. rungs.Where(r => r.Rung.Left != r.Rung.Right)];

    /// <summary>How often a rung was held against those that stay.</summary>
    internal long Looks { get; private set; }

    internal IEnumerable<Rung> Kept()
    {
        var kept = 0;
        var straight = new StraightWays(rungs, kept, Tolerance);
        for (var i = 0; i < rungs.Count; i++)
        {
            straight.Pass(i);
            var isInner = i > 0 && i < rungs.Count - 1 && i - kept <= MostDropped;
            if (
                (isInner && (straight.LeadTo(i + 1) || AreNear(kept, i + 1)))
                || (i > 0 && rungs[i].Rung == rungs[kept].Rung)
            )
                continue;
            kept = i;
            straight = new(rungs, kept, Tolerance);
            yield return rungs[i].Rung;
        }
    }

    /// <summary>What stands between two rungs lies where they would put it.</summary>
    private bool AreNear(int from, int to)
    {
        var (first, a) = rungs[from];
        var (last, b) = rungs[to];
        for (var i = from + 1; i < to; i++)
        {
            Looks++;
            var (at, rung) = rungs[i];
            var share = (at - first) / (last - first);
            if (
                !(a.Left.Towards(b.Left, share).DistanceTo(rung.Left) <= Tolerance)
                || !(a.Right.Towards(b.Right, share).DistanceTo(rung.Right) <= Tolerance)
            )
                return false;
        }
        return true;
    }
}
