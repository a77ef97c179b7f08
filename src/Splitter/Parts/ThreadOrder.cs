using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Stitching;

namespace Splitter.Parts;

/// <summary>Groups of pieces that are sewn with one thread without a stop.</summary>
internal static class ThreadOrder
{
    /// <summary>
    /// Each piece joins the earliest group of its thread after which nothing is sewn that lies under or over it; else it
    /// begins a new group. Layers stay in the drawing's order and threads are changed seldom.
    /// </summary>
    internal static ImmutableArray<ImmutableArray<SewnPiece>> Group(IEnumerable<SewnPiece> pieces)
    {
        var groups = new List<List<SewnPiece>>();
        foreach (var piece in pieces)
        {
            var joined = (List<SewnPiece>?)null;
            for (var at = groups.Count - 1; at >= 0; at--)
            {
                if (groups[at][0].Piece.Shape.Thread == piece.Piece.Shape.Thread)
                    joined = groups[at];
                if (groups[at].Exists(other => Touch(other, piece)))
                    break;
            }
            if (joined is not null)
                joined.Add(piece);
            else
                groups.Add([piece]);
        }
        return [.. groups.Select(g => g.ToImmutableArray())];
    }

    private static bool Touch(SewnPiece a, SewnPiece b)
    {
        var (one, other) = (a.Piece.Shape.Footprint, b.Piece.Shape.Footprint);
        return one.Bounds.Meets(other.Bounds) && !Polygons.Intersect(one, other).IsEmpty;
    }
}
