using System.Collections.Immutable;

namespace Splitter.Geometry;

/// <summary>
/// An open line with every corner rounded as far as its two sides allow: an arc from the middle of the shorter side to
/// as far along the other, and over all of a side that is the line's first or last. A curve that was drawn as many
/// short sides keeps its own radius; one that is given by a few points becomes as gentle as it can be.
/// </summary>
internal sealed class RoundedLine
{
    /// <summary>
    /// Places of the drawn line nearer to the one before are left out, µm: a tremor of the hand is no bend.
    /// </summary>
    private const double ShortestSide = Units.Millimetre;

    /// <summary>
    /// Most that an arc turns from vertex to vertex, radians: 4 degrees, whose chord is short by 2 parts in 10,000.
    /// </summary>
    private const double ArcStep = Math.PI / 45;

    /// <summary>Vertices nearer than this are one, µm.</summary>
    private const double Same = 0.01;

    /// <summary>A corner that turns less than this is none, radians.</summary>
    private const double Straight = 1e-9;

    /// <summary>
    /// Decimals that places (µm) and directions are snapped to, since platforms differ in trigonometry's last.
    /// </summary>
    private const int PlaceDecimals = 3,
        DirectionDecimals = 9;

    private readonly List<(Vector At, Vector Way)> vertices = [];

    internal RoundedLine(Polyline drawn)
    {
        Corners = Sides(drawn);
        Add(Corners[0], Way(0));
        for (var i = 1; i < Corners.Length - 1; i++)
            Round(i);
        Add(Corners[^1], Way(Corners.Length - 2));
    }

    /// <summary>The drawn line without sides that are too short.</summary>
    internal ImmutableArray<Vector> Corners { get; }

    /// <summary>Places along the line, and its direction in each, of length 1.</summary>
    internal IReadOnlyList<(Vector At, Vector Way)> Vertices => vertices;

    /// <summary>Of the sharpest corner its radius, µm, and where it is; infinity on a straight line.</summary>
    internal (double Radius, Vector At) Tightest { get; private set; } = (double.PositiveInfinity, default);

    private static ImmutableArray<Vector> Sides(Polyline drawn)
    {
        ImmutableArray<Vector> all = [.. drawn.Points.Select(p => new Vector(p.X, p.Y))];
        var kept = new List<Vector> { all[0] };
        foreach (var p in all)
            if ((p - kept[^1]).Length >= ShortestSide)
                kept.Add(p);
        // The end stays where it is: what crowds it goes instead.
        if (kept[^1] != all[^1] && kept.Count > 1)
            kept.RemoveAt(kept.Count - 1);
        if (kept[^1] != all[^1])
            kept.Add(all[^1]);
        return [.. kept];
    }

    private Vector Way(int side) => (Corners[side + 1] - Corners[side]).Unit;

    private void Round(int corner)
    {
        var (before, after) = (Way(corner - 1), Way(corner));
        var turn = Math.Atan2(Vector.Cross(before, after), Vector.Dot(before, after));
        if (Math.Abs(turn) < Straight)
            return;
        var reach = Math.Min(Free(corner - 1), Free(corner));
        var radius = reach / Math.Tan(Math.Abs(turn) / 2);
        if (radius < Tightest.Radius)
            Tightest = (radius, Corners[corner]);
        var start = Corners[corner] - (before * reach);
        var steps = (int)Math.Ceiling(Math.Abs(turn) / ArcStep);
        for (var k = 0; k <= steps; k++)
        {
            var (sin, cos) = Math.SinCos(Math.Abs(turn) * k / steps);
            var inwards = before.Left * -Math.Sign(turn);
            Add(start + (before * (radius * sin)) + (inwards * (radius * (1 - cos))), (before * cos) + (inwards * sin));
        }
    }

    /// <summary>How much of a side one corner may take.</summary>
    private double Free(int side)
    {
        var length = (Corners[side + 1] - Corners[side]).Length;
        var corners = (side > 0 ? 1 : 0) + (side < Corners.Length - 2 ? 1 : 0);
        return length / corners;
    }

    private void Add(Vector at, Vector way)
    {
        at = new(Math.Round(at.X, PlaceDecimals), Math.Round(at.Y, PlaceDecimals));
        if (vertices.Count == 0 || (vertices[^1].At - at).Length > Same)
            vertices.Add((at, new(Math.Round(way.X, DirectionDecimals), Math.Round(way.Y, DirectionDecimals))));
    }
}
