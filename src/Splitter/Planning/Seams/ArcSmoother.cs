using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>
/// Turns the stairs of a seam on the grid into a line that can be sewn: straight legs where nothing speaks for a bend,
/// the artwork's own edge where the seam runs along one, rounded corners. Of all ways through the places that the
/// stairs pass it takes the one of least price (shortest path in a graph without loops). Its ends stay where they are,
/// and it stays in the ground that both fields share, because that is a box.
/// </summary>
internal sealed class ArcSmoother(
    SeamPrice price,
    SeamRoom room,
    CoverMap map,
    Outlines outlines,
    SeamGrid grid,
    LayerMap layers
)
{
    /// <summary>
    /// An edge of the artwork as near as this to a step of the stairs that parts its colours is meant by it, µm: most
    /// of a cell of the grid.
    /// </summary>
    private const int SnapDistance = 1200;

    /// <summary>
    /// What a vertex costs, in the unit of <see cref="SeamPrice"/>: a bend is worth it when it saves that much. Jagged
    /// seams cannot be overlapped evenly.
    /// </summary>
    private const double Bend = 0.5;

    /// <summary>What a vertex costs that only follows an edge.</summary>
    private const double BendOnEdge = 0.02;

    /// <summary>
    /// What a leg costs that runs along an edge without following it, as a share of one through the middle of a fill:
    /// it leaves slivers, but is better than a jump from one edge to the next.
    /// </summary>
    private const double BesideEdge = 0.4;

    /// <summary>Longest leg in places of the stairs (about a millimetre each): work grows with its square.</summary>
    private const int LongestLeg = 32;

    /// <summary>Sums are rounded: what may be dearer by less is priced to the end, mm of plain fill.</summary>
    private const double Doubt = 1e-6;

    /// <summary>Corners are cut off this far from their tip, µm, and less on short legs: half a cell.</summary>
    private const double Rounding = 1500;

    /// <summary>A turn whose cosine is larger (15 degrees) needs no rounding.</summary>
    private const double Straight = 0.966;

    /// <summary>
    /// An edge is followed as long as it is no longer than this many times the straight way, and this much, µm:
    /// further, it goes out round something that a seam need not go round. The second lets a short edge have a corner.
    /// </summary>
    private const double Detour = 1.5;

    private const double DetourSpare = 300;

    /// <summary>
    /// Distance between places at which a leg is asked for room beside it, µm: small beside the room.
    /// </summary>
    private const double RoomStep = 700;

    /// <param name="most">How far a leg may stray from the stairs that it replaces, µm.</param>
    internal SeamArc Smooth(SeamArc arc, ImmutableArray<Box> grounds, ImmutableArray<int?> owners, double most)
    {
        var common = grounds[arc.Right].Common(grounds[arc.Left]);
        var places = Places(arc, common);
        var later = Math.Max(arc.Left, arc.Right);
        var turned = new TurnedGround(grid, layers, owners, arc.Right, arc.Left, Box.Around(places.Select(p => p.At)));
        var ample = room.Ample(arc.Right, arc.Left);
        var (best, from) = (new double[places.Count], new int[places.Count]);
        for (var j = 1; j < places.Count; j++)
        {
            best[j] = double.PositiveInfinity;
            for (var i = j - 1; i >= Math.Max(0, j - LongestLeg); i--)
            {
                var (a, b) = (places[i], places[j]);
                // What turns may be less than nothing; all else only adds.
                var bound = best[i] + Length(a.At, b.At) + turned.Of(a.At, b.At);
                if (bound >= best[j] || !StaysNear(places, i, j, most))
                    continue;
                var cost =
                    bound
                    + (
                        i == j - 1 && Along(a, b, common) is { } along
                            ? BendOnEdge + price.Of(new([.. along]), later, owners)
                            : Leg(a.At, b.At, bound, best[j])
                    );
                if (cost < best[j] && !(ample.Contains(a.At) && ample.Contains(b.At)))
                    cost += Tightness(a.At, b.At, arc);
                if (cost < best[j])
                    (best[j], from[j]) = (cost, i);
            }
        }
        var way = new List<Outlines.Place>();
        for (var j = places.Count - 1; j > 0; j = from[j])
            way.Add(places[j]);
        way.Add(places[0]);
        way.Reverse();
        return arc with { Points = Drawn(way, common) };

        // A leg that makes its way dearer than the best one is not priced to the end: prices only add.
        double Leg(Point a, Point b, double before, double most)
        {
            if (before + Bend >= most)
                return Bend;
            var ground = price.OfGround(a, b, later, owners, BesideEdge, most - before - Bend + Doubt);
            return Bend + (before + (Bend + ground) >= most ? ground : ground + price.OfCrossings(a, b));
        }
    }

    /// <summary>
    /// The two ends, and between them the middles of steps, or edges of the artwork where a step parts colours.
    /// </summary>
    private List<Outlines.Place> Places(SeamArc arc, Box common)
    {
        var places = new List<Outlines.Place> { new(null, 0, arc.Points[0]) };
        for (var i = 1; i < arc.Points.Length; i++)
        {
            var (from, to) = (arc.Points[i - 1], arc.Points[i]);
            var middle = from.Towards(to, 0.5);
            var aside = Vector.Between(from, to).Left.Unit * SnapDistance;
            var upper = Math.Max(
                map.Top(middle.X + aside.X, middle.Y + aside.Y),
                map.Top(middle.X - aside.X, middle.Y - aside.Y)
            );
            var lower = Math.Min(
                map.Top(middle.X + aside.X, middle.Y + aside.Y),
                map.Top(middle.X - aside.X, middle.Y - aside.Y)
            );
            var snapped = upper == lower ? null : outlines.Nearest(upper, middle, SnapDistance);
            var place =
                snapped is { } edge && Inside(edge.At, common) is { } at ? edge with { At = at } : new(null, 0, middle);
            if (place.At != places[^1].At)
                places.Add(place);
        }
        if (places.Count > 1 && places[^1].At == arc.Points[^1])
            places.RemoveAt(places.Count - 1);
        places.Add(new(null, 0, arc.Points[^1]));
        return places;
    }

    /// <summary>
    /// A place beside an edge, on the border of the ground where only the edge itself lies inside; null where that does
    /// not either.
    /// </summary>
    private static Point? Inside(Point p, Box common) =>
        common.Grown(Outlines.Beside).Contains(p)
            ? new(Math.Clamp(p.X, common.Left, common.Right), Math.Clamp(p.Y, common.Top, common.Bottom))
            : null;

    private static double Length(Point a, Point b) => SeamPrice.Length * a.DistanceTo(b) / Units.Millimetre;

    /// <summary>What a leg costs that leaves too little room for an overlap on one of its sides.</summary>
    private double Tightness(Point a, Point b, SeamArc arc)
    {
        var length = a.DistanceTo(b);
        var count = (int)Math.Ceiling(length / RoomStep);
        var sum = 0.0;
        for (var k = 0; k < count; k++)
        {
            var p = a.Towards(b, (k + 0.5) / count);
            if (map.TopCut(p.X, p.Y) != CoverMap.Bare)
                sum += room.ShortageOfSeam(arc.Right, arc.Left, p);
        }
        return count == 0 ? 0 : sum * length / count / Units.Millimetre;
    }

    private static bool StaysNear(List<Outlines.Place> places, int from, int to, double most)
    {
        var (a, b) = (places[from].At, places[to].At);
        var leg = Vector.Between(a, b);
        var length = leg.Length;
        for (var k = from + 1; k < to; k++)
        {
            var aside =
                length == 0
                    ? a.DistanceTo(places[k].At)
                    : Math.Abs(Vector.Cross(leg, Vector.Between(a, places[k].At))) / length;
            if (aside > most)
                return false;
        }
        return true;
    }

    /// <summary>
    /// The stretch of edge between two neighbouring places on it; null where it makes a detour or leaves the ground.
    /// </summary>
    private static List<Point>? Along(Outlines.Place a, Outlines.Place b, Box common)
    {
        if (a.Ring is not { } ring || ring != b.Ring)
            return null;
        var path = Outlines.Between(ring, a, b);
        return
            Outlines.Length(path) <= (Detour * a.At.DistanceTo(b.At)) + DetourSpare
            && path.TrueForAll(p => Inside(p, common) is not null)
            ? path.ConvertAll(p => Inside(p, common)!.Value)
            : null;
    }

    private static ImmutableArray<Point> Drawn(List<Outlines.Place> way, Box common)
    {
        var points = new List<(Point At, bool Rounded)> { (way[0].At, false) };
        for (var i = 1; i < way.Count; i++)
        {
            if (Along(way[i - 1], way[i], common) is { } path)
            {
                points[^1] = points[^1] with { Rounded = false };
                points.AddRange(path.Skip(1).Select(p => (p, false)));
            }
            else
                points.Add((way[i].At, i < way.Count - 1));
        }
        var drawn = new List<Point>();
        for (var i = 0; i < points.Count; i++)
            foreach (
                var p in points[i].Rounded ? Rounded(points[i - 1].At, points[i].At, points[i + 1].At) : [points[i].At]
            )
                if (drawn.Count == 0 || drawn[^1] != p)
                    drawn.Add(p);
        return [.. drawn];
    }

    /// <summary>A corner as a quadratic curve from one leg to the other, in chords.</summary>
    internal static Point[] Rounded(Point before, Point corner, Point after)
    {
        var (to, on) = (Vector.Between(corner, before), Vector.Between(corner, after));
        if (-Vector.Dot(to, on) >= Straight * to.Length * on.Length)
            return [corner];
        var back = to.Unit * Math.Min(Rounding, to.Length / 2);
        var forth = on.Unit * Math.Min(Rounding, on.Length / 2);
        return
        [
            .. new[] { 0, 0.25, 0.5, 0.75, 1 }.Select(t =>
                ((back * ((1 - t) * (1 - t))) + (forth * (t * t))).From(corner)
            ),
        ];
    }
}
