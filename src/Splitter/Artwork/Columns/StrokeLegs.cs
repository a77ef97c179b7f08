using Splitter.Geometry;

namespace Splitter.Artwork.Columns;

/// <summary>The legs of a centre line and the rungs along them, caps aside.</summary>
internal sealed class StrokeLegs
{
    /// <summary>
    /// Two chords of a round join meet at this turn, radians (15 degrees): within 1 % of the half width.
    /// </summary>
    private const double ArcStep = Math.PI / 12;

    /// <summary>
    /// Flattened curves turn this sharply only on legs shorter than this, µm: at 0.02 mm tolerance a leg of 0.3 mm
    /// turns 31 degrees at most. A curve has no corners to join, so such bends are round whatever the stroke's joins
    /// are.
    /// </summary>
    internal const double LegOfACorner = 300;

    /// <summary>
    /// A leg has room for rungs of its own when it is this many times as long as its bends lean over it.
    /// </summary>
    private const double RoomForOwnRungs = 2;

    /// <summary>Reaches of neighbouring legs that differ less than this, µm, share a rung: one tape step.</summary>
    private const double Unnoticed = Units.TapeStep;

    private readonly StrokeVertex[] vertices;
    private readonly double[] lengths;
    private readonly bool closed;
    private readonly double half;
    private readonly Join join;
    private readonly double mitreLimit;

    /// <param name="points">At least two; of a closed line the last repeats the first.</param>
    /// <param name="mitreLimit">SVG's <c>stroke-miterlimit</c>: a longer mitre becomes a bevel.</param>
    internal StrokeLegs(List<Point> points, bool closed, double half, Join join, double mitreLimit)
    {
        (this.closed, this.half, this.join, this.mitreLimit) = (closed, half, join, mitreLimit);
        var legs = points.Count - 1;
        Vector[] along = [.. Enumerable.Range(0, legs).Select(i => Vector.Between(points[i], points[i + 1]).Unit)];
        lengths = [.. Enumerable.Range(0, legs).Select(i => points[i].DistanceTo(points[i + 1]))];
        vertices =
        [
            .. Enumerable
                .Range(0, closed ? legs : legs + 1)
                .Select(i => new StrokeVertex(
                    points[i],
                    i > 0 ? along[i - 1]
                        : closed ? along[^1]
                        : along[0],
                    i < legs ? along[i] : along[^1]
                )),
        ];
        for (var i = 0; i < vertices.Length; i++)
            if (!vertices[i].IsGentle)
                vertices[i].Bend =
                    vertices[i].IsSharp || (vertices[i].IsMitred && IsPointed(i)) ? Bend.Mitre : Bend.Inner;
        Settle();
    }

    internal IEnumerable<Rung> Rungs() => Enumerable.Range(0, vertices.Length).SelectMany(At);

    private int Next(int i) => (i + 1) % vertices.Length;

    private double Lean(int i) => vertices[i].Bend == Bend.Pivot ? 0 : vertices[i].Lean;

    /// <summary>
    /// Bends whose inner corner finds no room on both legs pivot; gentle ones between long legs get rungs of their own.
    /// </summary>
    private void Settle()
    {
        // Each pass only takes inner corners away, so the order does not matter once none is left to take.
        bool changed;
        do
        {
            changed = false;
            for (var i = 0; i < lengths.Length; i++)
            {
                var (a, b) = (i, Next(i));
                if ((Math.Abs(Lean(a)) + Math.Abs(Lean(b))) * half <= lengths[i])
                    continue;
                foreach (var end in new[] { a, b })
                {
                    if (vertices[end].Bend is not (Bend.Inner or Bend.Mitre))
                        continue;
                    vertices[end].Bend = Bend.Pivot;
                    changed = true;
                }
            }
        } while (changed);
        for (var i = 0; i < vertices.Length; i++)
            if (vertices[i] is { Bend: Bend.Gentle, IsUnseen: false } && HasRoom(LegBefore(i)) && HasRoom(i))
                vertices[i].Bend = Bend.Inner;
    }

    private int LegBefore(int i) => i > 0 ? i - 1 : lengths.Length - 1;

    private bool HasRoom(int leg) =>
        leg < lengths.Length
        && (Math.Abs(Lean(leg)) + Math.Abs(Lean(Next(leg)))) * half * RoomForOwnRungs <= lengths[leg];

    /// <summary>How far the rungs of a leg reach on each side: no further than where those at its ends meet.</summary>
    private (double Left, double Right) Reach(int leg)
    {
        var lean = Lean(leg) + Lean(Next(leg));
        var meeting = Math.Abs(lean) * half <= lengths[leg] ? half : lengths[leg] / Math.Abs(lean);
        return lean > 0 ? (half, meeting) : (meeting, half);
    }

    private IEnumerable<Rung> At(int i) =>
        vertices[i].Bend == Bend.Gentle ? Gentle(i) : Around(vertices[i], IsCorner(i) ? join : Join.Round);

    private bool IsPointed(int i) => join == Join.Mitre && vertices[i].MitreRatio <= mitreLimit && IsCorner(i);

    private bool IsCorner(int i) => Math.Min(lengths[LegBefore(i)], lengths[i]) >= LegOfACorner;

    /// <summary>Along the bisector, as far as the leg before allows, then as far as the leg after.</summary>
    private IEnumerable<Rung> Gentle(int i)
    {
        var hasBefore = closed || i > 0;
        var before = Reach(hasBefore ? LegBefore(i) : i);
        var after = Reach(i < lengths.Length ? i : LegBefore(i));
        var bisector = vertices[i].Bisector;
        yield return Along(before);
        if (Math.Abs(before.Left - after.Left) + Math.Abs(before.Right - after.Right) > Unnoticed)
            yield return Along(after);

        Rung Along((double Left, double Right) reach) =>
            new((bisector * reach.Left).From(vertices[i].At), (bisector * -reach.Right).From(vertices[i].At));
    }

    private IEnumerable<Rung> Around(StrokeVertex vertex, Join join)
    {
        var right = vertex.TurnsRight;
        var outward = right ? 1 : -1;
        var corner = (vertex.Bisector * (-outward * half)).From(vertex.At);
        var inner = vertex.Bend == Bend.Inner ? corner : vertex.At;
        var (first, last) = (vertex.Before.Left * (outward * half), vertex.After.Left * (outward * half));
        yield return vertex.Bend == Bend.Pivot
            ? Square(vertex.At, vertex.Before)
            : Make((first * 2).From(corner), corner);
        yield return Make(first.From(vertex.At), inner);
        foreach (var outer in Between(vertex, outward, join))
            yield return Make(outer, vertex.Bend != Bend.Inner && join == Join.Mitre ? outer : inner);
        yield return Make(last.From(vertex.At), inner);
        yield return vertex.Bend == Bend.Pivot
            ? Square(vertex.At, vertex.After)
            : Make((last * 2).From(corner), corner);

        Rung Make(Point outer, Point inside) => right ? new(outer, inside) : new(inside, outer);
    }

    /// <summary>The outer edge between the legs: a mitre's tip, an arc, or nothing for a bevel.</summary>
    private IEnumerable<Point> Between(StrokeVertex vertex, int outward, Join join)
    {
        if (join == Join.Mitre && vertex.MitreRatio <= mitreLimit)
            yield return (vertex.Bisector * (outward * half)).From(vertex.At);
        if (join != Join.Round)
            yield break;
        var steps = (int)Math.Ceiling(vertex.Turn / ArcStep);
        for (var k = 1; k < steps; k++)
        {
            var turned = vertex.Turn * k / steps;
            var radius = (vertex.Before.Left * (outward * Math.Cos(turned))) + (vertex.Before * Math.Sin(turned));
            yield return (radius * half).From(vertex.At);
        }
    }

    private Rung Square(Point at, Vector along) => new((along.Left * half).From(at), (along.Left * -half).From(at));
}
