using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Stitching.Density;

namespace Splitter.Parts;

/// <summary>
/// Ways below what later stitches of a part cover: the shortest (Dijkstra 1959) that keep off ground with many layers.
/// </summary>
internal sealed class HiddenWays
{
    /// <summary>
    /// Longest way, µm. Mostly it saves a trim, which takes as long as a hundred stitches and leaves two
    /// ends; this takes a third of that. Common practice, no source.
    /// </summary>
    private const double Longest = 100 * Units.Millimetre;

    /// <summary>
    /// How far from the hidden ground a block may end or begin, µm: a rim reaches 0.8 mm below what hides it.
    /// </summary>
    private const double Reach = Units.Millimetre;

    /// <summary>The way stays this near to the box around both ends, µm: the effort is bounded.</summary>
    private const int Detour = 30 * Units.Millimetre;

    /// <summary>
    /// How much longer a way may be for each layer that it then does not lie on, as a share of its length.
    /// </summary>
    private const double WorthALayer = 1;

    /// <summary>
    /// The same for each layer beyond what cloth and needle bear: rather a way ten times as long, up to
    /// <see cref="Longest"/>.
    /// </summary>
    private const double WorthTooMany = 25;

    /// <summary>Of a square that a way crosses, how much it covers, in layers.</summary>
    internal const double OneThread = (double)ThreadGrid.ThreadWidth / Units.Millimetre;

    /// <summary>The cells around one by column and row, and how far off they are, µm.</summary>
    private static readonly ImmutableArray<(int Dx, int Dy, double Away)> Neighbours =
    [
        .. from dy in Enumerable.Range(-1, 3)
        from dx in Enumerable.Range(-1, 3)
        where (dx, dy) != (0, 0)
        select (dx, dy, Math.Sqrt((double)HiddenGround.Cell * HiddenGround.Cell * ((dx * dx) + (dy * dy)))),
    ];

    private readonly HiddenGround ground;
    private readonly ThreadGrid layers;
    private readonly double most;
    private readonly ReachedCell[] reached;
    private readonly CellQueue queue = new(HiddenGround.Cell);
    private int search;
    private bool mayCrowd;

    /// <summary>A cell as a search has come to it.</summary>
    /// <param name="Search">Which one: what others have left is not cleared.</param>
    /// <param name="Before">The cell that it was reached from.</param>
    /// <param name="Cost">Of the way to it.</param>
    /// <param name="Lying">Layers there: a cell is come to from several sides.</param>
    private readonly record struct ReachedCell(int Search, int Before, double Cost, double Lying);

    /// <param name="layers">Of the whole cloth.</param>
    /// <param name="mostLayers">That cloth and needle bear, less <see cref="Square.Between"/>.</param>
    internal HiddenWays(HiddenGround ground, ThreadGrid layers, double mostLayers)
    {
        (this.ground, this.layers, most) = (ground, layers, mostLayers);
        reached = new ReachedCell[ground.Cells];
    }

    /// <summary>The corners of a way, both ends included; null when there is none.</summary>
    /// <param name="next">Number of the stitch after it: this one and later ones hide it.</param>
    /// <param name="mayCrowd">It may lie where too many layers are, if there is no other; as little as can be.</param>
    internal ImmutableArray<Point>? Find(Point from, Point to, int next, bool mayCrowd = false)
    {
        (this.mayCrowd, search) = (mayCrowd, search + 1);
        queue.Clear();
        foreach (var cell in Near(from, next))
            Came(cell, new(search, -1, ground.MiddleOf(cell).DistanceTo(from), LyingOn(cell)));
        var goals = Near(to, next).ToHashSet();
        var window = Box.Around([from, to]).Grown(Detour);
        while (goals.Count > 0 && queue.TryTake(out var cell, out var cost))
        {
            if (cost > reached[cell].Cost)
                continue;
            if (goals.Contains(cell))
                return Straightened(cell, from, to, next) is var way && way.Length <= Longest ? way.Points : null;
            GoOn(cell, next, window);
        }
        return null;
    }

    /// <summary>From a cell to its neighbours.</summary>
    private void GoOn(int cell, int next, Box window)
    {
        var (here, middle) = (reached[cell].Cost, ground.MiddleOf(cell));
        foreach (var (dx, dy, away) in Neighbours)
        {
            var neighbour = cell + (dy * ground.Columns) + dx;
            // Each micrometre costs one at least.
            if (!ground.IsHidden(neighbour, next) || IsReached(neighbour, here + away))
                continue;
            var at = new Point(middle.X + (dx * HiddenGround.Cell), middle.Y + (dy * HiddenGround.Cell));
            if (!window.Contains(at))
                continue;
            var lying = reached[neighbour].Search == search ? reached[neighbour].Lying : layers.LayersAt(at);
            if (Bears(lying))
                Came(neighbour, new(search, cell, here + (Weight(lying) * away), lying));
        }
    }

    /// <summary>Cells to begin or end a way in.</summary>
    private IEnumerable<int> Near(Point end, int next)
    {
        var (middle, cells) = (ground.At(end), (int)Math.Ceiling(Reach / HiddenGround.Cell));
        for (var dy = -cells; dy <= cells; dy++)
        for (var dx = -cells; dx <= cells; dx++)
            if (
                middle + (dy * ground.Columns) + dx is var cell
                && cell >= 0
                && cell < ground.Cells
                && ground.MiddleOf(cell).DistanceTo(end) <= Reach
                && IsOpen(cell, next)
            )
                yield return cell;
    }

    private void Came(int cell, ReachedCell how)
    {
        if (IsReached(cell, how.Cost))
            return;
        reached[cell] = how;
        queue.Add(cell, how.Cost);
    }

    private bool IsReached(int cell, double cost) => reached[cell].Search == search && reached[cell].Cost <= cost;

    /// <summary>Hidden, and bears one thread more.</summary>
    private bool IsOpen(int cell, int next) => ground.IsHidden(cell, next) && Bears(LyingOn(cell));

    private double LyingOn(int cell) => layers.LayersAt(ground.MiddleOf(cell));

    /// <summary>A way that saves a trim is worth what is kept free elsewhere.</summary>
    private bool Bears(double lying) => mayCrowd || TooMany(lying) <= Square.Between;

    /// <summary>
    /// Layers beyond what they should be, <see cref="Square.Between"/> less than cloth and needle bear, with one thread
    /// more than those that lie there.
    /// </summary>
    private double TooMany(double lying) => Math.Max(0, lying + OneThread - most);

    private double Weight(double lying) => 1 + (WorthALayer * lying) + (WorthTooMany * TooMany(lying));

    /// <summary>The way that ends in a cell, without the corners that it need not turn at.</summary>
    private Polyline Straightened(int goal, Point from, Point to, int next)
    {
        var points = new List<Point> { to };
        for (var cell = goal; cell >= 0; cell = reached[cell].Before)
            points.Add(ground.MiddleOf(cell));
        points.Add(from);
        points.Reverse();
        var kept = ImmutableArray.CreateBuilder<Point>();
        for (int at = 0, far; at < points.Count - 1; at = far)
        {
            kept.Add(points[at].OnTape());
            far = at + 1;
            var burden = Burden(points[at], points[far]);
            for (var further = far + 1; further < points.Count; further++)
            {
                burden += Burden(points[further - 1], points[further]);
                if (Burden(points[at], points[further]) > burden)
                    break;
                far = further;
            }
        }
        kept.Add(to.OnTape());
        return new(kept.ToImmutable());

        // Layers too many on a straight leg, summed over its length; without bound where it cannot go.
        double Burden(Point a, Point b)
        {
            var (count, sum) = ((int)Math.Ceiling(a.DistanceTo(b) / (HiddenGround.Cell / 2.0)), 0.0);
            for (var k = 0; k <= count; k++)
            {
                var point = a.Towards(b, (double)k / count);
                var isAtEnd = point.DistanceTo(from) <= Reach || point.DistanceTo(to) <= Reach;
                if (!isAtEnd && !IsOpen(ground.At(point), next))
                    return double.PositiveInfinity;
                sum += isAtEnd ? 0 : TooMany(layers.LayersAt(point));
            }
            return sum * a.DistanceTo(b) / count;
        }
    }
}
