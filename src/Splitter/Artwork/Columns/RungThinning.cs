namespace Splitter.Artwork.Columns;

/// <summary>Leaves out the rungs of a column that those before and after them say already.</summary>
internal static class RungThinning
{
    /// <summary>
    /// Rungs whose both ends lie this near to where their neighbours would put them are dropped, µm: a tenth of a tape
    /// step.
    /// </summary>
    private const double Tolerance = 10;

    /// <summary>
    /// So many rungs in a row are dropped at most: 200 mm of a straight column or more. Each is looked at again for
    /// every one that follows it, and metres of a ribbon would take minutes.
    /// </summary>
    internal const int MostDropped = 2000;

    /// <param name="rungs">In order, each with how far along the column it stands.</param>
    internal static IEnumerable<Rung> Kept(IEnumerable<(double At, Rung Rung)> rungs)
    {
        List<(double At, Rung Rung)> all = [.. rungs.Where(r => r.Rung.Left != r.Rung.Right)];
        var kept = 0;
        for (var i = 0; i < all.Count; i++)
        {
            var isInner = i > 0 && i < all.Count - 1 && i - kept <= MostDropped;
            if ((isInner && AreNear(all, kept, i + 1)) || (i > 0 && all[i].Rung == all[kept].Rung))
                continue;
            kept = i;
            yield return all[i].Rung;
        }
    }

    /// <summary>What stands between two rungs lies where they would put it.</summary>
    private static bool AreNear(List<(double At, Rung Rung)> rungs, int from, int to)
    {
        var (first, a) = rungs[from];
        var (last, b) = rungs[to];
        for (var i = from + 1; i < to; i++)
        {
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
