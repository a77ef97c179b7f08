using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning.Seams;

namespace Splitter.Planning.Marks;

/// <summary>Which hooping is the first to sew on each square millimetre of cloth; none on bare cloth.</summary>
internal sealed class GroundMap
{
    /// <summary>A place that nobody sews.</summary>
    internal const int Bare = int.MaxValue;

    /// <summary>Side of a cell, µm: finer than the arms of a corner need, coarse enough for a whole bedspread.</summary>
    private const int Cell = Units.Millimetre;

    private readonly Box bounds;
    private readonly int columns;
    private readonly int[] first;

    internal GroundMap(Drawing drawing, Division division)
    {
        bounds = drawing.Bounds;
        columns = (bounds.Width / Cell) + 1;
        var rows = (bounds.Height / Cell) + 1;
        first = new int[columns * rows];
        Array.Fill(first, Bare);

        var territory = new int[first.Length];
        Array.Fill(territory, Bare);
        for (var i = 0; i < division.Territories.Length; i++)
            Cover(division.Territories[i], cell => territory[cell] = i);
        for (var s = 0; s < drawing.Shapes.Length; s++)
            Cover(
                drawing.Shapes[s].Footprint,
                cell => first[cell] = Math.Min(first[cell], division.Owners[s] ?? territory[cell])
            );
    }

    /// <summary>Index of the hooping that sews there first, or <see cref="Bare"/>.</summary>
    internal int FirstSewn(Point at) =>
        bounds.Contains(at) ? first[((at.Y - bounds.Top) / Cell * columns) + ((at.X - bounds.Left) / Cell)] : Bare;

    /// <summary>Visits the cells whose middles lie in a region: scan lines through the middles.</summary>
    private void Cover(Region region, Action<int> visit)
    {
        var box = region.Bounds.Common(bounds);
        if (box.IsEmpty)
            return;
        var crossings = new List<double>();
        for (var row = (box.Top - bounds.Top) / Cell; row <= (box.Bottom - bounds.Top) / Cell; row++)
        {
            double y = bounds.Top + (row * Cell) + (Cell / 2);
            crossings.Clear();
            foreach (var ring in region.Rings)
                for (int i = 0, j = ring.Points.Length - 1; i < ring.Points.Length; j = i++)
                {
                    var (a, b) = (ring.Points[j], ring.Points[i]);
                    if (a.Y <= y != b.Y <= y)
                        crossings.Add(a.X + ((b.X - (double)a.X) * (y - a.Y) / (b.Y - (double)a.Y)));
                }
            crossings.Sort();
            for (var k = 0; k + 1 < crossings.Count; k += 2)
            {
                var from = Math.Max(0, (int)Math.Ceiling((crossings[k] - bounds.Left - (Cell / 2)) / Cell));
                var to = Math.Min(columns - 1, (int)Math.Floor((crossings[k + 1] - bounds.Left - (Cell / 2)) / Cell));
                for (var column = from; column <= to; column++)
                    visit((row * columns) + column);
            }
        }
    }
}
