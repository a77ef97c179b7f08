using Nts = NetTopologySuite.Geometries;

namespace Splitter.Geometry.Arrangements;

/// <summary>
/// Closed lines around ground, vertex after vertex, each line with its first vertex again at its end. They may cross
/// themselves and each other in any way.
/// </summary>
internal sealed class Outlines
{
    /// <summary>How far around a window lines are left as they are, µm: pixels reach no further.</summary>
    private const int Margin = 2;

    /// <summary>Micrometres, not always whole ones.</summary>
    internal List<double> Xs { get; } = [];

    internal List<double> Ys { get; } = [];

    /// <summary>The first vertex of each line, and where the last line ends.</summary>
    internal List<int> Starts { get; } = [0];

    /// <summary>For each line what is added to the winding number where one crosses it to its left.</summary>
    internal List<Winding> Windings { get; } = [];

    /// <summary>Ground as one of the operands, whichever way its rings run: it winds once around all of it.</summary>
    /// <param name="window">
    /// Only what lies in there matters. Where a vertex beyond it bends a line by less than a micrometre, the line may
    /// lie so much otherwise than without a window: two answers about the same ground need not fit to a square
    /// micrometre.
    /// </param>
    internal Outlines Add(Region region, Winding winding, Box? window = null)
    {
        var around = default(Winding);
        foreach (var polygon in region.Polygons)
        {
            around += Lead(polygon.Outer, IsLeftward(polygon.Outer) ? winding : -winding, window);
            foreach (var hole in polygon.Holes)
                around += Lead(hole, IsLeftward(hole) ? -winding : winding, window);
        }
        return around == default ? this : Add(Region.Of(window!.Value.Grown(2 * Margin)).Polygons[0].Outer, around);
    }

    internal Outlines Add(Ring ring, Winding winding)
    {
        Lead(ring, winding, null);
        return this;
    }

    /// <summary>
    /// Adds a ring as far as it matters in a window. One that comes near it nowhere is not added: of many around each
    /// other straight lines beyond the window would cross each other in thousands of places.
    /// </summary>
    /// <returns>How often a ring that is not added winds around the window.</returns>
    private Winding Lead(Ring ring, Winding winding, Box? window)
    {
        var points = ring.Points.AsSpan();
        var (box, beyond) = (window ?? ring.Bounds, 0);
        var isAllNear = box.Grown(Margin).Contains(ring.Bounds);
        for (var i = 0; i < points.Length; i++)
        {
            if (!isAllNear)
            {
                // What stays beyond one side of the window from vertex to vertex is as good as a straight line.
                var own = Beyond(box, points[i]);
                if (i > 0 && (beyond & own & Beyond(box, points[(i + 1) % points.Length])) != 0)
                {
                    beyond &= own;
                    continue;
                }
                beyond = own;
            }
            Xs.Add(points[i].X);
            Ys.Add(points[i].Y);
        }
        if (isAllNear || TurnsAround(box) is not { } turns)
        {
            Close(winding);
            return default;
        }
        Xs.RemoveRange(Starts[^1], Xs.Count - Starts[^1]);
        Ys.RemoveRange(Starts[^1], Ys.Count - Starts[^1]);
        return new(turns * winding.First, turns * winding.Second);
    }

    /// <summary>
    /// How often the line that is being added turns leftward around a window; null where a side of it may come near.
    /// </summary>
    private int? TurnsAround(Box window)
    {
        var (x, y, turns) = (((double)window.Left + window.Right) / 2, ((double)window.Top + window.Bottom) / 2, 0);
        for (var (i, j) = (Starts[^1], Xs.Count - 1); i < Xs.Count; j = i++)
        {
            if ((Beyond(window, new((int)Xs[j], (int)Ys[j])) & Beyond(window, new((int)Xs[i], (int)Ys[i]))) == 0)
                return null;
            if (Ys[j] <= y == Ys[i] <= y)
                continue;
            var left = ((Xs[i] - Xs[j]) * (y - Ys[j])) - ((x - Xs[j]) * (Ys[i] - Ys[j]));
            turns +=
                Ys[j] <= y && left > 0 ? 1
                : Ys[i] <= y && left < 0 ? -1
                : 0;
        }
        return turns;
    }

    /// <summary>Polygons of the engine as the only operand.</summary>
    internal Outlines Add(Nts.Polygon polygon)
    {
        Add(polygon.Shell, isHole: false);
        foreach (var hole in polygon.Holes)
            Add(hole, isHole: true);
        return this;
    }

    private void Add(Nts.LinearRing ring, bool isHole)
    {
        var points = ring.CoordinateSequence;
        for (var i = 0; i + 1 < points.Count; i++)
        {
            Xs.Add(points.GetX(i));
            Ys.Add(points.GetY(i));
        }
        Close(ring.IsCCW == isHole ? -Winding.OfFirst : Winding.OfFirst);
    }

    private Outlines Close(Winding winding)
    {
        var first = Starts[^1];
        if (Xs.Count > first)
        {
            Xs.Add(Xs[first]);
            Ys.Add(Ys[first]);
            Starts.Add(Xs.Count);
            Windings.Add(winding);
        }
        return this;
    }

    private static bool IsLeftward(Ring ring)
    {
        var points = ring.Points.AsSpan();
        var twice = 0.0;
        for (int i = 0, j = points.Length - 1; i < points.Length; j = i++)
        {
            var (a, b) = (points[j] - points[0], points[i] - points[0]);
            twice += ((double)a.X * b.Y) - ((double)b.X * a.Y);
        }
        return twice > 0;
    }

    /// <summary>The sides of a window beyond which a point lies, a bit each (Cohen and Sutherland 1967).</summary>
    private static int Beyond(Box window, Point p) =>
        (p.X < window.Left - Margin ? 1 : 0)
        | (p.X > window.Right + Margin ? 2 : 0)
        | (p.Y < window.Top - Margin ? 4 : 0)
        | (p.Y > window.Bottom + Margin ? 8 : 0);
}

/// <summary>How often lines wind around a place, leftward as seen with y up, for each of two operands.</summary>
internal readonly record struct Winding(int First, int Second)
{
    internal static readonly Winding OfFirst = new(1, 0);
    internal static readonly Winding OfSecond = new(0, 1);

    public static Winding operator +(Winding a, Winding b) => new(a.First + b.First, a.Second + b.Second);

    public static Winding operator -(Winding a) => new(-a.First, -a.Second);
}
