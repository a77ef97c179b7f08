using System.Collections.Immutable;
using Splitter.Cutting;
using Splitter.Stitching;
using Splitter.Stitching.Density;
using Splitter.Stitching.Satins;

namespace Splitter.Parts;

/// <summary>
/// Rings of satin begin where there is room. A ring goes on a little over its start and is tied there at both ends:
/// that is too much on a sharp corner of it, or over what else lies there.
/// </summary>
/// <param name="layers">Of the whole cloth; what is changed is counted there.</param>
/// <param name="most">Layers that cloth and needle bear.</param>
internal sealed class RoomyRings(ThreadGrid layers, double most)
{
    /// <summary>So many starts around a ring are looked at.</summary>
    private const int Starts = 8;

    /// <summary>The pieces, with each ring begun where it makes fewest layers too many.</summary>
    internal ImmutableArray<SewnPiece> Begun(ImmutableArray<SewnPiece> sewn) => [.. sewn.Select(Begun)];

    private SewnPiece Begun(SewnPiece sewn)
    {
        if (sewn.Piece is not SatinPiece piece || SatinStitcher.Ring(piece) is not { } ring)
            return sewn;
        var (best, least) = (sewn, -Crowd(sewn, -1));
        if (least > 0)
            foreach (var other in Elsewhere(sewn, piece, ring).Where(IsCounted))
            {
                if (Crowd(other, 1) is var sum && sum < least)
                    (best, least) = (other, sum);
                Crowd(other, -1);
            }
        Crowd(best, 1);
        return best;
    }

    private static IEnumerable<SewnPiece> Elsewhere(SewnPiece sewn, SatinPiece piece, ColumnLine ring) =>
        Enumerable
            .Range(1, Starts - 1)
            .Select(i => piece with { Columns = [ring.BegunAt(ring.Length * i / Starts)] })
            .Select(begun => sewn with { Blocks = SatinStitcher.Stitch(begun) });

    /// <summary>All of it lies where thread is counted.</summary>
    private bool IsCounted(SewnPiece sewn) =>
        sewn
            .Blocks.SelectMany(b => b.Stitches)
            .All(stitch => layers.Ground.Grown(-ThreadGrid.ThreadWidth).Contains(stitch.At));

    /// <summary>Lays its thread, or takes it out again; what comes to be layers too many.</summary>
    private long Crowd(SewnPiece sewn, int sign) =>
        ClothLayers.Threads([sewn]).Sum(thread => layers.Crowd(thread.From, thread.To.At, sign * thread.Breadth, most));
}
