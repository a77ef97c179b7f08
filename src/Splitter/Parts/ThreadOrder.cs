using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Stitching;

namespace Splitter.Parts;

/// <summary>Groups of pieces that are sewn with one thread without a stop.</summary>
internal static class ThreadOrder
{
    /// <summary>
    /// Each piece joins the last group of its thread, if nothing that lies under or over it is sewn in between; else it
    /// begins a new group. Layers stay in the drawing's order and threads are changed seldom.
    /// </summary>
    internal static ImmutableArray<ImmutableArray<SewnPiece>> Group(IEnumerable<SewnPiece> pieces)
    {
        var groups = new List<List<SewnPiece>>();
        foreach (var piece in pieces)
        {
            var at = groups.Count - 1;
            while (at >= 0 && groups[at][0].Piece.Shape.Thread != piece.Piece.Shape.Thread)
                at = groups[at].Exists(other => Touch(other, piece)) ? -1 : at - 1;
            if (at >= 0)
                groups[at].Add(piece);
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
