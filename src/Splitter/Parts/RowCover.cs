using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Splitter.Geometry;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter.Parts;

/// <summary>
/// What lies over each other near squares with more layers than they bear, thread by thread of all parts: which rows
/// are not needed there, since the cloth is covered without them. Parts that lie apart have to do with other squares.
/// </summary>
internal sealed class RowCover
{
    /// <summary>
    /// So far inside the edge of what else covers the cloth a row is not needed, µm: as far as parts may be off.
    /// </summary>
    private const int Inside = 400;

    /// <summary>
    /// How far beside its middle a row covers the cloth, µm: a little more than half of what is usual between rows, so
    /// that no place between them is left bare.
    /// </summary>
    private const int Breadth = 250;

    /// <summary>And beyond its end, µm: half of its width.</summary>
    private const int Beyond = ThreadGrid.ThreadWidth / 2;

    /// <summary>Rows are followed in steps of this, µm.</summary>
    private const double Stride = 200;

    /// <summary>
    /// How far around crowded squares it is known, mm: rows end up to 2 mm earlier, and are covered beyond.
    /// </summary>
    private const int Near = 3;

    /// <summary>Directions in which a place lies inside; what is looked at lies closer together than rows.</summary>
    private const int Directions = 8;

    private static readonly ImmutableArray<Vector> Around =
    [
        new(0, 0),
        .. Enumerable
            .Range(0, Directions)
            .Select(i => 2 * Math.PI * i / Directions)
            .Select(angle => new Vector(Inside * Math.Cos(angle), Inside * Math.Sin(angle))),
    ];

    /// <summary>A stitch of a block, by its place in the order in which those of all parts are sewn.</summary>
    private readonly record struct Thread(int Block, Point From, Point To, StitchUse Use)
    {
        private readonly double length = Math.Max(1, From.DistanceTo(To));

        /// <summary>Whether a place lies no further beside it or beyond its ends.</summary>
        internal bool IsNear(Point at, int beside)
        {
            var (way, to) = (Vector.Between(From, To), Vector.Between(From, at));
            var along = Vector.Dot(way, to) / length;
            return along >= -Beyond && along <= length + Beyond && Math.Abs(Vector.Cross(way, to)) <= beside * length;
        }
    }

    private readonly Box ground;
    private readonly GroundMap near;

    /// <summary>Of whole millimetres: of finer ones each stitch would lie on many.</summary>
    private readonly List<Thread>[] squares;

    /// <summary>For each part the place of its first block; one more at the end.</summary>
    private readonly int[] firsts;

    /// <summary>For each block its part and shape, as numbers.</summary>
    private readonly (int Part, int Shape)[] blocks;

    /// <param name="parts">The blocks of each in sewing order.</param>
    /// <param name="layers">Of the whole cloth.</param>
    /// <param name="most">Layers that cloth and needle bear.</param>
    internal RowCover(IReadOnlyList<Block[]> parts, ThreadGrid layers, double most)
    {
        ground = layers.Ground;
        ImmutableArray<ImmutableArray<Quarter>> around =
        [
            .. Quarter
                .Near(layers.Fuller(most).SelectMany(s => s.Quarters), Near)
                .Where(q => ground.Contains(q.Middle))
                .Select(q => new Square(q.Column & ~1, q.Row & ~1))
                .Distinct()
                .Select(s => s.Quarters),
        ];
        near = new(around);
        squares = [.. around.Select(_ => new List<Thread>())];
        var shapes = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var block in parts.SelectMany(part => part))
            shapes.TryAdd(block.Of, shapes.Count);
        blocks = [.. parts.SelectMany((part, i) => part.Select(block => (i, shapes[block.Of])))];
        firsts = new int[parts.Count + 1];
        for (var part = 0; part < parts.Count; part++)
        {
            firsts[part + 1] = firsts[part] + parts[part].Length;
            for (var i = 0; i < parts[part].Length; i++)
                if (Meets(parts[part][i]))
                    ForEach(firsts[part] + i, parts[part][i].Stitches.AsSpan(), (on, thread) => on.Add(thread));
        }
    }

    /// <summary>Whether some of a block lies where it is known.</summary>
    internal bool Meets(Block block) => near.Meets(block.Bounds.Grown(ThreadGrid.ThreadWidth));

    /// <summary>The place of a part's first block in the order in which those of all are sewn.</summary>
    internal int FirstOf(int part) => firsts[part];

    /// <summary>Whether it is known what lies at a place.</summary>
    internal bool Knows(Point at) => ground.Contains(at) && near.GroundOf(Quarter.At(at)) is not null;

    /// <summary>Other thread instead of some of a block.</summary>
    /// <param name="block">Its place in the order of all.</param>
    internal void Replace(int block, ReadOnlySpan<Stitch> old, ReadOnlySpan<Stitch> way)
    {
        ForEach(block, old, (on, thread) => on.Remove(thread));
        ForEach(block, way, (on, thread) => on.Add(thread));
    }

    /// <summary>Whether a row of a block, or a piece of it, is not needed: no place along it is.</summary>
    internal bool IsSpare(Point from, Point to, int block)
    {
        var count = Math.Max(1, (int)Math.Ceiling(from.DistanceTo(to) / Stride));
        for (var k = 0; k <= count; k++)
            if (!IsSpare(from.Towards(to, (double)k / count), block))
                return false;
        return true;
    }

    /// <summary>
    /// Whether the cloth is covered at a place and all around it without a row of some block: what is sewn later hides
    /// it, or earlier parts have sewn the same shape there and the row hides nothing that lies between.
    /// </summary>
    private bool IsSpare(Point at, int block)
    {
        var (part, lowest) = (blocks[block].Part, blocks[block].Part);
        foreach (var aside in Around)
        {
            var (place, below) = (aside.From(at), -1);
            foreach (ref readonly var thread in On(place))
                if (
                    thread.Use is StitchUse.Fill or StitchUse.Satin
                    && thread.IsNear(place, Breadth)
                    && (thread.Block > block || IsSame(thread, block))
                )
                {
                    below = Math.Max(below, thread.Block > block ? part : blocks[thread.Block].Part);
                    if (below == part)
                        break;
                }
            if (below < 0)
                return false;
            lowest = Math.Min(lowest, below);
        }
        return lowest == part || !HidesAnything(at, block, firsts[lowest + 1]);
    }

    /// <summary>Of the same shape, by an earlier part.</summary>
    private bool IsSame(Thread thread, int block) =>
        blocks[thread.Block].Shape == blocks[block].Shape && blocks[thread.Block].Part < blocks[block].Part;

    /// <summary>Whether a row lies over anything else than its own shape's rows.</summary>
    /// <param name="from">The first block that is asked for.</param>
    private bool HidesAnything(Point at, int block, int from)
    {
        foreach (ref readonly var thread in On(at))
            if (
                thread.Block >= from
                && thread.Block <= block
                && (thread.Use != StitchUse.Fill || blocks[thread.Block].Shape != blocks[block].Shape)
                && thread.IsNear(at, ThreadGrid.ThreadWidth)
            )
                return true;
        return false;
    }

    private ReadOnlySpan<Thread> On(Point at) =>
        ground.Contains(at) && near.GroundOf(Quarter.At(at)) is { } number
            ? CollectionsMarshal.AsSpan(squares[number])
            : [];

    private void ForEach(int block, ReadOnlySpan<Stitch> stitches, Action<List<Thread>, Thread> change)
    {
        for (var i = 1; i < stitches.Length; i++)
        {
            var thread = new Thread(block, stitches[i - 1].At, stitches[i].At, stitches[i].Use);
            var box = Box.Around([thread.From, thread.To]).Grown(ThreadGrid.ThreadWidth);
            if (!near.Meets(box))
                continue;
            var (first, last) = (Quarter.At(new(box.Left, box.Top)), Quarter.At(new(box.Right, box.Bottom)));
            for (var row = first.Row & ~1; row <= last.Row; row += 2)
            for (var column = first.Column & ~1; column <= last.Column; column += 2)
                if (near.GroundOf(new(column, row)) is { } number)
                    change(squares[number], thread);
        }
    }
}
