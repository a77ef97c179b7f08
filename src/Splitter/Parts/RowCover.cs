using Splitter.Geometry;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter.Parts;

/// <summary>
/// What lies over each other of all parts near squares with more layers than they bear, stitch by stitch: which places
/// would still be covered without a row's end.
/// </summary>
internal sealed class RowCover
{
    /// <summary>Squares around crowded ones that are known: rows end up to 2 mm earlier, and are covered beyond.</summary>
    private const int Near = 3;

    /// <summary>
    /// How far beside its middle a row covers the cloth, µm: a little more than half of what is usual between rows, so
    /// that no place between them is left bare.
    /// </summary>
    private const int Breadth = 250;

    /// <summary>
    /// How far inside the edge of what another part covers a place lies that is covered however parts may be off, µm.
    /// </summary>
    private const int Inside = HiddenGround.Cell;

    /// <summary>The same of its own part, µm: a thread's width.</summary>
    private const int InsideOwn = ThreadGrid.ThreadWidth;

    /// <summary>Thread of a block, by its place in the order in which all are sewn.</summary>
    private readonly record struct Laid(int Block, Point From, Point To, StitchUse Use);

    private readonly GroundMap near;
    private readonly List<Laid>[] squares;
    private readonly Box ground;

    /// <summary>For each part the place of its first block; one more at the end.</summary>
    private readonly int[] firsts;

    private readonly string[] shapeOf;

    /// <param name="parts">The blocks of each in sewing order.</param>
    internal RowCover(IReadOnlyList<Block[]> parts, ThreadGrid layers, int most)
    {
        ground = layers.Numbers.Ground;
        Square[] around =
        [
            .. layers
                .Squares.Where(s => layers.LayersOn(s) > most)
                .SelectMany(s => s.Within(Near))
                .Distinct()
                .Where(s => ground.Contains(s.Middle)),
        ];
        near = new(layers.Numbers, [.. around.Select(s => (System.Collections.Immutable.ImmutableArray<Square>)[s])]);
        squares = [.. around.Select(_ => new List<Laid>())];
        firsts = new int[parts.Count + 1];
        for (var part = 0; part < parts.Count; part++)
            firsts[part + 1] = firsts[part] + parts[part].Length;
        shapeOf = [.. parts.SelectMany(p => p).Select(b => b.Of)];
        if (around.Length == 0)
            return;
        for (var part = 0; part < parts.Count; part++)
        for (var i = 0; i < parts[part].Length; i++)
            Lay(firsts[part] + i, parts[part][i].Stitches.AsSpan());
    }

    internal int First(int part) => firsts[part];

    internal void Lay(int block, ReadOnlySpan<Stitch> stitches)
    {
        for (var i = 1; i < stitches.Length; i++)
        {
            var laid = new Laid(block, stitches[i - 1].At, stitches[i].At, stitches[i].Use);
            foreach (var list in Around(laid.From, laid.To))
                list.Add(laid);
        }
    }

    internal void TakeUp(int block, ReadOnlySpan<Stitch> stitches)
    {
        for (var i = 1; i < stitches.Length; i++)
        {
            var laid = new Laid(block, stitches[i - 1].At, stitches[i].At, stitches[i].Use);
            foreach (var list in Around(laid.From, laid.To))
                list.Remove(laid);
        }
    }

    /// <summary>Whether other thread covers a place as well as a row of a block does.</summary>
    internal bool Covers(Point at, int block, int part)
    {
        for (var other = 0; other < firsts.Length - 1; other++)
            if (other < part ? IsSewnBelow(at, block, other) : IsHidden(at, other == part ? block + 1 : firsts[other], firsts[other + 1], other == part ? InsideOwn : Inside))
                return true;
        return false;
    }

    private bool IsHidden(Point at, int from, int to, int by) =>
        IsCoveredAround(at, by, l => l.Block >= from && l.Block < to && l.Use is StitchUse.Fill or StitchUse.Satin && l.Block >= from && l.Block < to);

    /// <summary>An earlier part sews the same shape there, and nothing else lies over that.</summary>
    private bool IsSewnBelow(Point at, int block, int other)
    {
        var (from, to, shape) = (firsts[other], firsts[other + 1], shapeOf[block]);
        if (!IsCoveredAround(at, Inside, l => l.Block >= from && l.Block < to && l.Use == StitchUse.Fill && shapeOf[l.Block] == shape))
            return false;
        foreach (var l in At(at))
            if (l.Block >= to && l.Block <= block && !(l.Use == StitchUse.Fill && shapeOf[l.Block] == shape) && Polygons.Distance(l.From, l.To, at, at) < ThreadGrid.ThreadWidth)
                return false;
        return true;
    }

    private bool IsCoveredAround(Point at, int by, Func<Laid, bool> counts)
    {
        // Eight places are enough: they lie closer together than thread is wide.
        var aslant = by * 7 / 10;
        ReadOnlySpan<Point> all =
        [
            at,
            new(at.X - by, at.Y),
            new(at.X + by, at.Y),
            new(at.X, at.Y - by),
            new(at.X, at.Y + by),
            new(at.X - aslant, at.Y - aslant),
            new(at.X + aslant, at.Y - aslant),
            new(at.X - aslant, at.Y + aslant),
            new(at.X + aslant, at.Y + aslant),
        ];
        foreach (var place in all)
        {
            var covered = false;
            foreach (var l in At(place))
                if (counts(l) && Polygons.Distance(l.From, l.To, place, place) <= Breadth)
                {
                    covered = true;
                    break;
                }
            if (!covered)
                return false;
        }
        return true;
    }

    private List<Laid> At(Point at) => ground.Contains(at) && near.GroundOf(Square.At(at)) is { } number ? squares[number] : [];

    private IEnumerable<List<Laid>> Around(Point from, Point to)
    {
        var box = Box.Around([from, to]).Grown(ThreadGrid.ThreadWidth);
        if (!near.Meets(box))
            yield break;
        var (first, last) = (Square.At(new(box.Left, box.Top)), Square.At(new(box.Right, box.Bottom)));
        for (var row = first.Row; row <= last.Row; row++)
        for (var column = first.Column; column <= last.Column; column++)
            if (near.GroundOf(new(column, row)) is { } number)
                yield return squares[number];
    }
}
