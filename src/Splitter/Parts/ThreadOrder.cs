using System.Collections.Immutable;
using Splitter.Cutting;
using Splitter.Geometry;

namespace Splitter.Parts;

/// <summary>Groups of pieces that are sewn with one thread without a stop.</summary>
internal static class ThreadOrder
{
    /// <summary>
    /// Each piece joins the earliest group of its thread after which nothing is sewn that lies under or over it; else it
    /// begins a new group. Layers stay in the drawing's order and threads are changed seldom.
    /// </summary>
    /// <param name="pieceOf">What is grouped need not be stitched yet.</param>
    internal static ImmutableArray<ImmutableArray<T>> Group<T>(IEnumerable<T> sewn, Func<T, Piece> pieceOf)
    {
        var groups = new List<List<T>>();
        foreach (var one in sewn)
        {
            var piece = pieceOf(one);
            var joined = (List<T>?)null;
            for (var at = groups.Count - 1; at >= 0; at--)
            {
                if (pieceOf(groups[at][0]).Shape.Thread == piece.Shape.Thread)
                    joined = groups[at];
                if (groups[at].Exists(other => Touch(pieceOf(other), piece)))
                    break;
            }
            if (joined is not null)
                joined.Add(one);
            else
                groups.Add([one]);
        }
        return [.. groups.Select(g => g.ToImmutableArray())];
    }

    private static bool Touch(Piece a, Piece b)
    {
        var (one, other) = (a.Shape.Footprint, b.Shape.Footprint);
        return one.Bounds.Meets(other.Bounds) && !Polygons.Intersect(one, other).IsEmpty;
    }
}
