using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Cutting;
using Splitter.Geometry;

namespace Splitter.Tests.Cutting;

/// <summary>
/// How many pieces of fills and satin lie on each spot of the cloth, on a lattice; and how many shapes do, which is what
/// the drawing itself stacks up, seams or none.
/// </summary>
internal sealed class LayerMap
{
    /// <summary>Spots lie this far apart, µm: little more than a thread's width.</summary>
    internal const int Step = 500;

    private readonly double[] xs;
    private readonly double[] ys;

    internal LayerMap(Drawing drawing, ImmutableArray<Piece> pieces)
    {
        // Half a step in, and not on a whole number of tenths: seams and edges of fields lie there.
        xs = [.. Enumerable.Range(0, drawing.Width / Step).Select(i => (i * Step) + 253.7)];
        ys = [.. Enumerable.Range(0, drawing.Height / Step).Select(i => (i * Step) + 256.3)];
        Pieces = new byte[xs.Length * ys.Length];
        Shapes = new byte[xs.Length * ys.Length];
        var (piece, shape) = (new int[Pieces.Length], new int[Pieces.Length]);
        for (var p = 0; p < pieces.Length; p++)
            foreach (var ground in Grounds(pieces[p]))
                Stamp(ground, piece, p + 1, Pieces);
        for (var s = 0; s < drawing.Shapes.Length; s++)
            foreach (var part in pieces.Where(p => p.Shape == drawing.Shapes[s]))
            foreach (var ground in Cores(part))
                Stamp(ground, shape, s + 1, Shapes);
    }

    /// <summary>For each spot, row by row, how many pieces lie there.</summary>
    internal byte[] Pieces { get; }

    /// <summary>For each spot how many shapes lie there.</summary>
    internal byte[] Shapes { get; }

    /// <summary>Where a spot is, mm, and what lies there: hoopings and shapes.</summary>
    internal string Describe(int spot, ImmutableArray<Piece> pieces)
    {
        var (x, y) = (xs[spot % xs.Length], ys[spot / xs.Length]);
        var there = pieces
            .Where(p => Grounds(p).Any(ground => Polygons.Containment(ground)(x, y)))
            .Select(p => $"{p.Hooping} {p.Shape.Id}");
        return FormattableString.Invariant($"{x / 1000:0.0}, {y / 1000:0.0}: {string.Join(", ", there)}");
    }

    /// <summary>Ground that spots stand for, mm².</summary>
    internal static double Area(int spots) => spots * (double)Step * Step / 1e6;

    private void Stamp(Region ground, int[] last, int number, byte[] count) =>
        Scan.Cover(
            ground,
            xs,
            ys,
            (row, from, to) =>
            {
                for (var spot = (row * xs.Length) + from; spot <= (row * xs.Length) + to; spot++)
                    if (last[spot] != number)
                        (last[spot], count[spot]) = (number, (byte)(count[spot] + 1));
            }
        );

    private static IEnumerable<Region> Grounds(Piece piece) =>
        piece switch
        {
            FillPiece fill => [fill.EvenRows, fill.OddRows],
            SatinPiece satin => satin.Columns.SelectMany(Quads),
            _ => [],
        };

    private static IEnumerable<Region> Cores(Piece piece) => piece is FillPiece fill ? [fill.Core] : Grounds(piece);

    private static IEnumerable<Region> Quads(Column column)
    {
        for (var i = 1; i < column.Rungs.Length; i++)
        {
            var (a, b) = (column.Rungs[i - 1], column.Rungs[i]);
            yield return new([new(new([a.Left, b.Left, b.Right, a.Right]), [])]);
        }
    }
}
