using System.Collections.Immutable;
using Splitter.Artwork.Tapes;
using Splitter.Geometry;
using Splitter.Planning;

namespace Splitter.Cutting.Tapes;

/// <summary>
/// Which hooping sews each stitch of a shape that seams cut: that on whose territory its middle lies. What crosses a
/// seam below others goes to the earliest one, and what would lie on what is finished to an earlier one, so that it
/// does not.
/// </summary>
internal sealed class StitchOwners
{
    /// <summary>
    /// Less of a line or row than this, µm, goes to the neighbour whole: tied at both ends it would be nothing but
    /// knots. Common practice, no source.
    /// </summary>
    private const int Scrap = 1500;

    private readonly ImmutableArray<Box> fields;
    private readonly ImmutableArray<FinishedWork> finished;
    private readonly ImmutableArray<Region> territories;
    private readonly ImmutableArray<Func<double, double, bool>> owns;

    /// <param name="finished">For each hooping what lies over the shape whose stitches are asked for.</param>
    internal StitchOwners(Plan plan, ImmutableArray<Region> territories, ImmutableArray<FinishedWork> finished)
    {
        (this.territories, this.finished) = (territories, finished);
        fields = [.. plan.Hoopings.Select(h => h.Ground)];
        owns = [.. territories.Select(Polygons.Containment)];
    }

    /// <summary>The field can sew the stitch.</summary>
    internal bool CanSew(int hooping, Point from, Point to) =>
        fields[hooping].Contains(from) && fields[hooping].Contains(to);

    /// <summary>
    /// For each hole the hooping that sews the stitch to it; the first hole goes with the second. No stitch is longer
    /// than some field can sew: see <see cref="Divided"/>.
    /// </summary>
    internal int[] Of(ImmutableArray<OriginalStitch> stitches)
    {
        var owners = new int[stitches.Length];
        for (var i = 1; i < stitches.Length; i++)
            owners[i] = Owner(stitches[i - 1].At, stitches[i]);
        owners[0] = stitches.Length > 1 ? owners[1] : Nearest(stitches[0].At, stitches[0].At)!.Value;
        GiveScraps(stitches, owners);
        return owners;
    }

    /// <summary>
    /// The stitches, with a hole more in the middle of those that no field holds whole: where grounds overlap by less
    /// than a stitch.
    /// </summary>
    internal ImmutableArray<(OriginalStitch Stitch, bool IsNew)> Divided(ImmutableArray<OriginalStitch> stitches)
    {
        var divided = ImmutableArray.CreateBuilder<(OriginalStitch, bool)>(stitches.Length);
        divided.Add((stitches[0], false));
        for (var i = 1; i < stitches.Length; i++)
            Divide(stitches[i - 1].At, stitches[i], divided);
        return divided.ToImmutable();
    }

    private void Divide(Point from, OriginalStitch to, ImmutableArray<(OriginalStitch, bool)>.Builder divided)
    {
        var middle = from.Towards(to.At, 0.5).OnTape();
        if (middle != from && middle != to.At && Nearest(from, to.At) is null)
        {
            Divide(from, to with { At = middle }, divided);
            divided[^1] = divided[^1] with { Item2 = true };
            Divide(middle, to, divided);
        }
        else
            divided.Add((to, false));
    }

    private int Owner(Point from, OriginalStitch to)
    {
        if (to.IsBelow && Earliest(from, to.At) is { } earliest)
            return earliest;
        var owner = Nearest(from, to.At)!.Value;
        for (var i = owner; i >= 0; i--)
            if ((i == owner || CanSewOf(i, from, to.At)) && !finished[i].IsUnder(from, to.At))
                return i;
        return owner;
    }

    /// <summary>
    /// Of the hoopings that can sew a stitch, the first on whose territory some of it lies; null where that is none.
    /// </summary>
    private int? Earliest(Point from, Point to)
    {
        for (var i = 0; i < fields.Length; i++)
            if (CanSewOf(i, from, to))
                return i;
        return null;
    }

    /// <summary>The hooping can sew a stitch of which some lies on its territory.</summary>
    private bool CanSewOf(int hooping, Point from, Point to) =>
        CanSew(hooping, from, to)
        && from.Towards(to, 0.5) is var middle
        && (owns[hooping](middle.X, middle.Y) || owns[hooping](from.X, from.Y) || owns[hooping](to.X, to.Y));

    /// <summary>
    /// Of the hoopings that can sew a stitch, that on whose territory its middle lies, or nearest to it.
    /// </summary>
    private int? Nearest(Point from, Point to)
    {
        var (middle, best, nearest) = (from.Towards(to, 0.5), default(int?), double.PositiveInfinity);
        for (var i = 0; i < fields.Length; i++)
            if (CanSew(i, from, to))
            {
                if (owns[i](middle.X, middle.Y))
                    return i;
                if (Polygons.Distance(territories[i], middle) is var distance && distance < nearest)
                    (best, nearest) = (i, distance);
            }
        return best;
    }

    private void GiveScraps(ImmutableArray<OriginalStitch> stitches, int[] owners)
    {
        for (int from = 1, to; from < owners.Length; from = to)
        {
            for (to = from + 1; to < owners.Length && owners[to] == owners[from]; )
                to++;
            if (Length(stitches, from, to) >= Scrap)
                continue;
            foreach (var neighbour in Neighbours(owners, from, to))
                if (Enumerable.Range(from, to - from).All(i => CanTake(neighbour, stitches[i - 1].At, stitches[i].At)))
                {
                    Array.Fill(owners, neighbour, from, to - from);
                    break;
                }
        }
        if (owners.Length > 1)
            owners[0] = owners[1];
    }

    private bool CanTake(int hooping, Point from, Point to) =>
        CanSew(hooping, from, to) && !finished[hooping].IsUnder(from, to);

    private static IEnumerable<int> Neighbours(int[] owners, int from, int to)
    {
        if (from > 1)
            yield return owners[from - 1];
        if (to < owners.Length)
            yield return owners[to];
    }

    /// <summary>Of the line that is sewn: a column counts along itself, not across.</summary>
    private static double Length(ImmutableArray<OriginalStitch> stitches, int from, int to)
    {
        var length = 0.0;
        for (var i = from; i < to; i++)
            length +=
                stitches[i].Kind == StitchKind.Satin && i > 1
                    ? stitches[i - 2].At.DistanceTo(stitches[i].At) / 2
                    : stitches[i - 1].At.DistanceTo(stitches[i].At);
        return length;
    }
}
