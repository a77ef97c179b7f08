using System.Collections.Immutable;
using System.Numerics;

namespace Splitter.Geometry;

/// <summary>
/// Ground that thread covers, in cells: thread may cross itself as often as it likes, and the effort grows with its
/// length alone. Cells are kept in tiles of eight by eight, a bit each.
/// </summary>
internal sealed class CellGround
{
    /// <summary>Side of a cell, µm: finer than the 0.4 mm between rows, coarse enough for square metres.</summary>
    internal const int Side = 250;

    /// <summary>Stairs of cells become straight lines where these lie within this of their corners, µm.</summary>
    private const double Stairs = 180;

    /// <summary>Smaller holes are no bare cloth but chance, µm².</summary>
    private const double SmallestHole = 2.0 * Units.SquareMillimetre;

    /// <summary>Ground with more corners is a tangle, of which no hole smaller than this matters, µm².</summary>
    private const int ManyCorners = 100_000;

    private const double SmallestOfMany = 200.0 * Units.SquareMillimetre;

    /// <summary>Cells along a side of a tile, as a power of two.</summary>
    private const int TilePower = 3;

    private const int TileSide = 1 << TilePower;

    private readonly Dictionary<Cell, ulong> tiles = [];

    /// <summary>Where they lie among all tiles, and which cells of them are covered.</summary>
    internal IEnumerable<KeyValuePair<Cell, ulong>> Tiles => tiles;

    /// <summary>How many cells it has.</summary>
    internal int Count { get; private set; }

    /// <summary>Adds a straight line with what lies within a distance of it.</summary>
    /// <param name="by">µm.</param>
    internal void Lay(Point from, Point to, int by)
    {
        var count = Math.Max(1, (int)Math.Ceiling(from.DistanceTo(to) / Side));
        Cell? last = null;
        for (var k = 0; k <= count; k++)
        {
            var at = CellOf(from.Towards(to, (double)k / count));
            if (at != last)
                Spread(at, (by + Side - 1) / Side);
            last = at;
        }
    }

    /// <summary>Adds other ground to this.</summary>
    internal void Add(CellGround other)
    {
        foreach (var (tile, bits) in other.tiles)
            Add(tile, bits);
    }

    internal bool Has(Point place) => Contains(CellOf(place));

    internal bool Meets(CellGround other)
    {
        var (fewer, more) = tiles.Count <= other.tiles.Count ? (tiles, other.tiles) : (other.tiles, tiles);
        return fewer.Any(tile => (more.GetValueOrDefault(tile.Key) & tile.Value) != 0);
    }

    /// <summary>At least this share of it lies on other ground.</summary>
    internal bool IsOn(CellGround other, double share) =>
        Count * share <= other.Count && Shared(other) >= Count * share;

    /// <summary>How many cells both have.</summary>
    internal int Shared(CellGround other) =>
        tiles.Sum(tile => BitOperations.PopCount(tile.Value & other.tiles.GetValueOrDefault(tile.Key)));

    /// <summary>
    /// The part of it that lies within a tile of other ground, so that <see cref="Inner"/> is right there.
    /// </summary>
    internal CellGround Near(CellGround other)
    {
        var near = new CellGround();
        foreach (var tile in other.tiles.Keys)
            for (var down = -1; down <= 1; down++)
            for (var right = -1; right <= 1; right++)
                if (tile + new Cell(right, down) is var at && tiles.TryGetValue(at, out var bits))
                    near.Add(at, bits);
        return near;
    }

    /// <summary>What lies at least a distance within its edges.</summary>
    /// <param name="by">µm.</param>
    internal CellGround Inner(int by)
    {
        var inner = this;
        for (var k = (by + Side - 1) / Side; k > 0; k--)
        {
            var smaller = new CellGround();
            foreach (var (tile, bits) in inner.tiles)
                if ((bits & ~inner.Edges(tile)) is var left and not 0)
                    smaller.Add(tile, left);
            inner = smaller;
        }
        return inner;
    }

    /// <summary>The ground with its stairs made straight.</summary>
    internal Region ToRegion()
    {
        Firm();
        var islands = new CellIslands(Cells());
        var rings = CellOutlines.Of(Cells(edgesOnly: true), Contains, Side).Select(points => new Ring(points)).ToList();
        var smallest = rings.Sum(r => (long)r.Points.Length) > ManyCorners ? SmallestOfMany : SmallestHole;
        var polygons = rings
            .ToLookup(ring => islands.Of(Inside(ring)))
            .Select(of => new Polygon(of.Single(r => r.SignedArea > 0), [.. of.Where(r => r.SignedArea < -smallest)]));
        return Polygons.Simplify(new([.. polygons]), Stairs);
    }

    /// <summary>Fills cells in where others touch at a corner alone: no outline then touches itself.</summary>
    private void Firm()
    {
        var added = new Stack<Cell>();
        foreach (var cell in Cells(edgesOnly: true).ToList())
            Firm(cell, added);
        while (added.TryPop(out var cell))
            Firm(cell, added);
    }

    private void Firm(Cell cell, Stack<Cell> added)
    {
        foreach (var down in (ReadOnlySpan<int>)[-1, 1])
        foreach (var right in (ReadOnlySpan<int>)[-1, 1])
        {
            var below = cell + new Cell(0, down);
            if (Contains(below) || Contains(cell + new Cell(right, 0)) || !Contains(below + new Cell(right, 0)))
                continue;
            Add(TileOf(below), BitOf(below));
            added.Push(below);
        }
    }

    private bool Contains(Cell cell) => (tiles.GetValueOrDefault(TileOf(cell)) & BitOf(cell)) != 0;

    /// <summary>Row by row, each from the left.</summary>
    /// <param name="edgesOnly">Those beside a cell that is none of them.</param>
    private IEnumerable<Cell> Cells(bool edgesOnly = false)
    {
        foreach (var band in tiles.Keys.OrderBy(t => t.Column).GroupBy(t => t.Row).OrderBy(b => b.Key))
        {
            var bits = band.Select(tile => (Tile: tile, Bits: edgesOnly ? Edges(tile) : tiles[tile])).ToList();
            for (var row = 0; row < TileSide; row++)
                foreach (var (tile, of) in bits)
                    for (var rest = (of >> (row << TilePower)) & 0xFF; rest != 0; rest &= rest - 1)
                        yield return new(
                            (tile.Column << TilePower) + BitOperations.TrailingZeroCount(rest),
                            (tile.Row << TilePower) + row
                        );
        }
    }

    private ulong Edges(Cell tile)
    {
        const ulong first = 0x0101_0101_0101_0101;
        const ulong last = first << (TileSide - 1);
        const int row = TileSide * (TileSide - 1);
        ulong Of(int right, int down) => tiles.GetValueOrDefault(tile + new Cell(right, down));
        var bits = tiles[tile];
        var above = (bits << TileSide) | (Of(0, -1) >> row);
        var below = (bits >> TileSide) | (Of(0, 1) << row);
        var left = ((bits & ~last) << 1) | ((Of(-1, 0) & last) >> (TileSide - 1));
        var right = ((bits & ~first) >> 1) | ((Of(1, 0) & first) << (TileSide - 1));
        return bits & ~(above & below & left & right);
    }

    /// <summary>The cell to the right of a ring's first side.</summary>
    private static Cell Inside(Ring ring)
    {
        var (from, to) = (ring.Points[0], ring.Points[1]);
        var corner = new Cell(from.X / Side, from.Y / Side);
        return from.Y == to.Y
            ? corner + (to.X > from.X ? new Cell(0, 0) : new(-1, -1))
            : corner + (to.Y > from.Y ? new Cell(-1, 0) : new(0, -1));
    }

    private void Spread(Cell at, int by)
    {
        // Nearly round, so that a slanting line is as wide as a level one.
        for (var row = -by; row <= by; row++)
        for (var column = -by; column <= by; column++)
            if ((row * row) + (column * column) <= (by * by) + by)
            {
                var cell = at + new Cell(column, row);
                Add(TileOf(cell), BitOf(cell));
            }
    }

    private void Add(Cell tile, ulong bits)
    {
        var there = tiles.GetValueOrDefault(tile);
        if ((there & bits) == bits)
            return;
        tiles[tile] = there | bits;
        Count += BitOperations.PopCount(bits & ~there);
    }

    private static Cell TileOf(Cell cell) => new(cell.Column >> TilePower, cell.Row >> TilePower);

    private static ulong BitOf(Cell cell) =>
        1UL << (((cell.Row & (TileSide - 1)) << TilePower) + (cell.Column & (TileSide - 1)));

    private static Cell CellOf(Point point) => new(Down(point.X), Down(point.Y));

    private static int Down(int micrometres) => (int)Math.Floor(micrometres / (double)Side);
}
