namespace Splitter.Geometry;

/// <summary>
/// A line that the rows of fills follow, on both sides of it and beyond its ends, where it goes on straight: u is
/// counted along the line from its start, v square off it, to its right. Rows keep their distance everywhere; inside a
/// bend they are shorter than the line, outside longer.
/// </summary>
/// <remarks>
/// Between two vertices the line and the ribs that stand square on it are interpolated. Vertices lie on straight lines
/// and on arcs, where the ribs meet in the centre: which rib a point lies on is then linear in its distances from both,
/// so that the way back from the drawing is as exact as the way to it.
/// </remarks>
internal sealed class Guide : Frame
{
    /// <summary>
    /// How far a straight line of the drawing may bend away from the places that stand for it, µm: parts of one shape,
    /// whose outlines are divided in other places, must agree on where a row ends.
    /// </summary>
    private const double Straying = 0.5;

    /// <summary>Longest and shortest stretches of a straight line of the drawing between two places, µm.</summary>
    private const double Longest = 2 * Units.Millimetre,
        Finest = 20;

    private readonly Vector[] points;
    private readonly Vector[] normals;
    private readonly double[] along;

    internal Guide(RoundedLine line)
    {
        points = [.. line.Vertices.Select(v => v.At)];
        normals = [.. line.Vertices.Select(v => -v.Way.Left)];
        along = new double[points.Length];
        for (var i = 1; i < points.Length; i++)
            along[i] = along[i - 1] + (points[i] - points[i - 1]).Length;
    }

    internal override bool IsRigid => false;

    internal override Frame Across => new Ribs(this);

    internal override (double U, double V) Of(Vector point)
    {
        // Of all ribs that lead through the point the shortest.
        var (best, last) = ((U: 0.0, V: double.PositiveInfinity), points.Length - 1);
        var ahead = Ahead(point, 0);
        if (ahead < 0)
            Take(ahead, Vector.Dot(point - points[0], normals[0]));
        for (var i = 0; i < last; i++)
        {
            var next = Ahead(point, i + 1);
            if (ahead >= 0 && next < 0)
            {
                var share = ahead / (ahead - next);
                var (at, normal) = Rib(i, share);
                Take(
                    along[i] + (share * (along[i + 1] - along[i])),
                    Vector.Dot(point - at, normal) / Vector.Dot(normal, normal)
                );
            }
            ahead = next;
        }
        if (ahead >= 0)
            Take(along[last] + ahead, Vector.Dot(point - points[last], normals[last]));
        return best;

        void Take(double u, double v)
        {
            if (Math.Abs(v) < Math.Abs(best.V))
                best = (u, v);
        }
    }

    internal override Vector At(double u, double v)
    {
        var last = points.Length - 1;
        if (u <= 0)
            return points[0] + (normals[0] * v) + (Way(0) * u);
        if (u >= along[last])
            return points[last] + (normals[last] * v) + (Way(last) * (u - along[last]));
        var i = SideOf(u);
        var (at, normal) = Rib(i, (u - along[i]) / (along[i + 1] - along[i]));
        return at + (normal * v);
    }

    internal override Vector Direction(double u, double v)
    {
        if (u <= 0 || u >= along[^1])
            return Way(u <= 0 ? 0 : points.Length - 1);
        var i = SideOf(u);
        var (_, normal) = Rib(i, (u - along[i]) / (along[i + 1] - along[i]));
        return normal.Left.Unit;
    }

    /// <summary>0 in the middle of a bend, and negative beyond it.</summary>
    internal override double Stretch(double u, double v) => 1 + (v * Turn(u));

    internal override double Bend(double u, double v) => Turn(u) / Stretch(u, v);

    internal override IEnumerable<(double U, double V)> Line(Vector from, Vector to)
    {
        var places = new List<(double, double)>();
        Divide(from, Of(from), to, Of(to), places);
        return places;
    }

    /// <summary>A row, or what lies of it between two places along it, with its corners.</summary>
    internal IEnumerable<Vector> Row(double v, double from, double to) =>
        along.Where(u => u > from && u < to).Prepend(from).Append(to).Select(u => At(u, v));

    /// <summary>Ground of the drawing laid out so that the rows are level; whole micrometres.</summary>
    internal Region Unrolled(Region ground) => Mapped(ground, ring => Of(ring).Select(p => new Vector(p.U, p.V)));

    /// <summary>The way back of <see cref="Unrolled"/>.</summary>
    internal Region Rolled(Region ground) => Mapped(ground, ring => ring.Points.Select(p => At(p.X, p.Y)));

    private static Region Mapped(Region ground, Func<Ring, IEnumerable<Vector>> map) =>
        Polygons.FromRings(
            ground.Rings.Select(ring => new Ring([.. map(ring).Select(p => p.From(default))])),
            FillRule.EvenOdd
        );

    private void Divide(
        Vector from,
        (double U, double V) start,
        Vector to,
        (double U, double V) end,
        List<(double U, double V)> places
    )
    {
        var (length, middle) = ((to - from).Length, (from + to) * 0.5);
        var at = Of(middle);
        var off = new Vector(at.U - ((start.U + end.U) / 2), at.V - ((start.V + end.V) / 2)).Length;
        if (length <= Finest || (length <= Longest && off <= Straying))
        {
            places.Add(end);
            return;
        }
        Divide(from, start, middle, at, places);
        Divide(middle, at, to, end, places);
    }

    /// <summary>How far a point lies ahead of the rib of a vertex, µm.</summary>
    private double Ahead(Vector point, int vertex) => Vector.Cross(point - points[vertex], normals[vertex]);

    private (Vector At, Vector Normal) Rib(int side, double share) =>
        (
            points[side] + ((points[side + 1] - points[side]) * share),
            normals[side] + ((normals[side + 1] - normals[side]) * share)
        );

    /// <summary>How much the line turns its right side outwards, for each micrometre.</summary>
    private double Turn(double u)
    {
        if (u <= 0 || u >= along[^1])
            return 0;
        var i = SideOf(u);
        var side = points[i + 1] - points[i];
        return Vector.Dot(normals[i + 1] - normals[i], side) / Vector.Dot(side, side);
    }

    private int SideOf(double u)
    {
        var i = Array.BinarySearch(along, u);
        return Math.Clamp(i >= 0 ? i : ~i - 1, 0, along.Length - 2);
    }

    private Vector Way(int vertex) => normals[vertex].Left;

    /// <summary>Straight rows along the ribs, square on the line.</summary>
    private sealed class Ribs(Guide guide) : Frame
    {
        internal override bool IsRigid => false;

        internal override Frame Across => throw new InvalidOperationException("Nothing is sewn across the ribs.");

        internal override (double U, double V) Of(Vector point)
        {
            var (u, v) = guide.Of(point);
            return (v, -u);
        }

        internal override Vector At(double u, double v) => guide.At(-v, u);

        internal override Vector Direction(double u, double v) => -guide.Direction(-v, u).Left;

        internal override IEnumerable<(double U, double V)> Line(Vector from, Vector to) =>
            guide.Line(from, to).Select(p => (p.V, -p.U));
    }
}
