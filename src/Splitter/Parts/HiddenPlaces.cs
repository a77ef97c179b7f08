using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Stitching;

namespace Splitter.Parts;

/// <summary>Other places for needle holes where nobody sees it: below what later stitches cover.</summary>
/// <param name="cover">What a part's stitches cover.</param>
/// <param name="moved">Holes of the part that lie elsewhere already.</param>
/// <param name="crosses">Where those of later parts meet what the part sews.</param>
internal sealed class HiddenPlaces(CoveredCells cover, MovedHoles moved, Point[] crosses)
{
    /// <summary>All that lie so near, on the tape's grid.</summary>
    private static readonly ImmutableArray<Vector> Near =
    [
        .. from y in Enumerable.Range(-Reach, (2 * Reach) + 1)
        from x in Enumerable.Range(-Reach, (2 * Reach) + 1)
        let step = new Vector(x * Units.TapeStep, y * Units.TapeStep)
        where step.Length is > 0 and <= Relief.HiddenMove
        select step,
    ];

    private const int Reach = (int)Relief.HiddenMove / Units.TapeStep;

    /// <summary>
    /// Places where later stitches hide the hole and both of its stitches, of which only hidden ones may be needed now.
    /// What of these lay in the open at first stays as near to that as does not show.
    /// </summary>
    /// <param name="block">By its place in the part.</param>
    /// <param name="stitches">Of it.</param>
    internal IEnumerable<Point> Of(int block, Stitch[] stitches, int hole)
    {
        Point before = stitches[hole - 1].At,
            at = stitches[hole].At,
            after = stitches[hole + 1].At;
        var next = cover.FirstOf(block) + hole + 2;
        Point[] first = [moved.First(before), moved.First(at), moved.First(after)];
        return IsSpare(before, stitches[hole], next) && IsSpare(at, stitches[hole + 1], next)
            ? Near.Select(step => step.From(at))
                .Where(place =>
                    cover.IsHidden(place, next) && RoomyTravel.IsHidden([before, place, after], first, next, cover)
                )
            : [];
    }

    /// <summary>Whether the cloth is covered without a stitch, and no cross is looked at beside it.</summary>
    private bool IsSpare(Point from, Stitch to, int next) =>
        to.Use is StitchUse.Travel or StitchUse.Underlay
        || (!RowEnds.IsNear(crosses, from) && !RowEnds.IsNear(crosses, to.At) && cover.IsCovered(from, to.At, next));
}
