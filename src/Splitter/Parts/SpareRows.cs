using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter.Parts;

/// <summary>
/// Leaves out rows where more thread lies than cloth and needle bear and the cloth is covered without them: whole rows
/// of tips with the way to them, and ends of others.
/// </summary>
/// <param name="cover">What lies over each other there.</param>
/// <param name="layers">Of the whole cloth; what is changed is counted there.</param>
/// <param name="most">Layers that cloth and needle bear.</param>
internal sealed class SpareRows(RowCover cover, ThreadGrid layers, double most)
{
    /// <summary>Most stitches that are left out one after the other: the search is bounded.</summary>
    private const int MostLeftOut = 12;

    private readonly RowEnds ends = new(cover, layers, most);

    /// <summary>Goes through a part, after earlier ones that lie on the same ground.</summary>
    /// <param name="blocks">In sewing order.</param>
    /// <param name="part">Its place among all.</param>
    /// <param name="crosses">Of all parts.</param>
    internal void LeaveOut(Block[] blocks, int part, ImmutableArray<AlignmentStitch> crosses)
    {
        var met = crosses
            .Where(cross => cross.With == part)
            .ToLookup(cross => cross.On, cross => cross.At, StringComparer.Ordinal);
        for (var i = 0; i < blocks.Length; i++)
        {
            if (!cover.Meets(blocks[i]))
                continue;
            var (all, place, rest) = (blocks[i].Stitches, cover.FirstOf(part) + i, ShortTie.Rest(blocks[i]));
            var stitches = all[rest.First..rest.End].ToList();
            Point[] near = [.. met[blocks[i].Of]];
            if (ends.Shorten(stitches, place, near) | LeaveOut(stitches, place, near))
                blocks[i] = blocks[i] with { Stitches = [.. all[..rest.First], .. stitches, .. all[rest.End..]] };
        }
    }

    /// <summary>Leaves out rows of a block, with the way to them, and says whether there were any.</summary>
    /// <inheritdoc cref="RowEnds.Shorten(List{Stitch}, int, Point[])"/>
    private bool LeaveOut(List<Stitch> stitches, int block, Point[] crosses)
    {
        var (any, first) = (false, 0);
        for (var full = 1; full < stitches.Count; full++)
        {
            // Mostly too little lies there, which is sooner told than whether others cover it.
            if (!IsFull(stitches, full) || !IsSpare(stitches, full, block, crosses))
                continue;
            var (begin, last) = (full - 1, full);
            while (begin > first && IsSpare(stitches, begin, block, crosses))
                begin--;
            while (last + 1 < stitches.Count && IsSpare(stitches, last + 1, block, crosses))
                last++;
            for (var i = begin; i + 2 <= last; i++)
                if (Farthest(stitches, i, last, block) is { } hole)
                {
                    Stitch[] way = [stitches[i], new(stitches[hole].At, StitchUse.Travel)];
                    var old = CollectionsMarshal.AsSpan(stitches)[i..(hole + 1)];
                    Count(old, -ThreadGrid.ThreadWidth);
                    Count(way, ThreadGrid.ThreadWidth);
                    cover.Replace(block, old, way);
                    stitches.RemoveRange(i + 1, hole - i);
                    stitches.Insert(i + 1, way[1]);
                    last -= hole - i - 1;
                    any = true;
                }
            first = full = last + 1;
        }
        return any;
    }

    private bool IsFull(List<Stitch> stitches, int stitch) =>
        stitches[stitch].Use is StitchUse.Travel or StitchUse.Fill
        && cover.Knows(stitches[stitch].At)
        && layers.IsOnMore(stitches[stitch - 1].At, stitches[stitch].At, most);

    /// <summary>Whether a stitch may be left out: it is on its way, or a row that is not needed.</summary>
    private bool IsSpare(List<Stitch> stitches, int stitch, int block, Point[] crosses)
    {
        var (from, to) = (stitches[stitch - 1].At, stitches[stitch]);
        return cover.Knows(to.At)
            && (
                to.Use == StitchUse.Travel
                || (
                    to.Use == StitchUse.Fill
                    && !RowEnds.IsNear(crosses, from)
                    && !RowEnds.IsNear(crosses, to.At)
                    && cover.IsSpare(from, to.At, block)
                )
            );
    }

    /// <summary>
    /// To which hole of some the thread goes straight on from one, so that fewest layers are too many; null for the
    /// next.
    /// </summary>
    private int? Farthest(List<Stitch> stitches, int first, int last, int block)
    {
        var (best, worth, from) = ((int?)null, 0L, stitches[first].At);
        for (var hole = first + 2; hole <= Math.Min(last, first + MostLeftOut); hole++)
            if (
                from.DistanceTo(stitches[hole].At) is >= StitchRules.Shortest and <= Ties.HiddenStitch
                && Saved(CollectionsMarshal.AsSpan(stitches)[first..(hole + 1)]) is var saved
                && saved > worth
                && cover.IsSpare(from, stitches[hole].At, block)
            )
                (best, worth) = (hole, saved);
        return best;
    }

    /// <summary>What is saved of layers too many where the thread goes straight, µm².</summary>
    private long Saved(ReadOnlySpan<Stitch> old)
    {
        Count(old, -ThreadGrid.ThreadWidth);
        var saved = layers.TooMany(Places(old), most) - layers.TooMany([old[0].At, old[^1].At], most);
        Count(old, ThreadGrid.ThreadWidth);
        return saved;
    }

    private void Count(ReadOnlySpan<Stitch> thread, int breadth) => layers.Lay(Places(thread), breadth);

    private static Point[] Places(ReadOnlySpan<Stitch> thread)
    {
        var places = new Point[thread.Length];
        for (var i = 0; i < places.Length; i++)
            places[i] = thread[i].At;
        return places;
    }
}
