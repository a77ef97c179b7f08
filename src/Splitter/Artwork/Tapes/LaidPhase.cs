using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Artwork.Tapes;

/// <summary>A phase and the ground that it covers.</summary>
/// <param name="Lines">Its stitches without the ground beside them; known when it is first asked for.</param>
internal sealed record LaidPhase(Phase Phase, CellGround Ground, Lazy<CellGround> Lines, Box Box)
{
    /// <summary>Something this small is no line of its own, µm: it ties, or goes to the next stretch.</summary>
    private const int Tiny = 2 * Units.Millimetre;

    /// <summary>Rows this far apart at most are covered ground, µm; wider ones are lines.</summary>
    private const int WidestRows = 2 * Units.Millimetre;

    /// <summary>Rows whose directions differ by less belong to one fill: the cosine of 8 degrees.</summary>
    private const double SameWay = 0.99;

    /// <summary>Spacings of one fill differ by less, as a factor: rows of one fill are equally dense.</summary>
    private const double SameSpacing = 1.35;

    private readonly Vector way = Phase.WayOf(Phase.Passes);

    internal StitchKind Kind => Phase.Kind;

    internal bool IsTiny => Kind == StitchKind.Run && Math.Max(Box.Width, Box.Height) <= Tiny;

    internal static LaidPhase Of(Phase phase, ImmutableArray<Point> holes)
    {
        var reach = phase.Spacing <= WidestRows ? Math.Max(CellGround.Side, (int)phase.Spacing / 2) : CellGround.Side;
        return new(
            phase,
            Ground(reach),
            new(() => Ground(0)),
            Box.Around(holes.AsSpan(phase.From, phase.To - phase.From + 1))
        );

        CellGround Ground(int by)
        {
            var ground = new CellGround();
            for (var i = phase.From; i <= phase.To; i++)
                ground.Lay(holes[Math.Max(phase.From, i - 1)], holes[i], by);
            return ground;
        }
    }

    /// <summary>Rows of one direction, equally dense, side by side.</summary>
    internal bool IsOneFillWith(LaidPhase other) =>
        Kind == StitchKind.Fill
        && other.Kind == StitchKind.Fill
        && Math.Max(Phase.Spacing, other.Phase.Spacing) <= SameSpacing * Math.Min(Phase.Spacing, other.Phase.Spacing)
        && Math.Abs(Vector.Dot(way, other.way)) >= SameWay
        && Touches(other);

    internal bool Touches(LaidPhase other) =>
        Box.Grown(CellGround.Side * 2).Meets(other.Box) && Ground.Meets(other.Ground);
}
