using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Artwork.Tapes;

/// <summary>What a phase is for within its object.</summary>
internal enum PhaseUse
{
    /// <summary>It is what one sees.</summary>
    Main,

    /// <summary>Sewn below it.</summary>
    Underlay,

    /// <summary>Goes from one stretch of it to the next, below it.</summary>
    Travel,

    /// <summary>Fastens the thread.</summary>
    Tie,
}

/// <summary>What belongs together on a tape: nothing else is sewn between its first stitch and its last.</summary>
/// <param name="Kind">Fill, satin or run.</param>
/// <param name="Phases">In sewing order.</param>
/// <param name="Ground">All that it covers.</param>
internal sealed record TapeObject(
    StitchKind Kind,
    ImmutableArray<(Phase Phase, PhaseUse Use)> Phases,
    CellGround Ground
)
{
    /// <summary>Something this small is no line of its own, µm: it ties, or goes to the next stretch.</summary>
    private const int Tiny = 2 * Units.Millimetre;

    /// <summary>Rows this far apart at most are covered ground, µm; wider ones are lines.</summary>
    private const int WidestRows = 2 * Units.Millimetre;

    /// <summary>Rows whose directions differ by less belong to one fill: the cosine of 8 degrees.</summary>
    private const double SameWay = 0.99;

    /// <summary>Spacings of one fill differ by less, as a factor: rows of one fill are equally dense.</summary>
    private const double SameSpacing = 1.35;

    internal Box Box { get; private init; }

    internal int FirstThread => Phases[0].Phase.Thread;

    internal int LastThread => Phases[^1].Phase.Thread;

    internal bool IsTiny => Kind == StitchKind.Run && Math.Max(Box.Width, Box.Height) <= Tiny;

    /// <summary>It hides what lies under it.</summary>
    internal bool IsClosed => Main.All(p => p.IsClosed);

    internal IEnumerable<Phase> Main => Phases.Where(p => p.Use == PhaseUse.Main).Select(p => p.Phase);

    /// <summary>Mean distance of its passes, µm.</summary>
    internal double Spacing => Main.Sum(p => p.Spacing * p.Passes.Length) / Math.Max(1, Main.Sum(p => p.Passes.Length));

    /// <summary>The way of its rows, of length 1, to either side.</summary>
    internal Vector Way
    {
        get
        {
            var sum = default(Vector);
            foreach (var way in Main.SelectMany(p => p.Passes).Select(p => p.Way))
                sum += Vector.Dot(sum, way) < 0 ? -way : way;
            return sum.Length > 0 ? sum.Unit : new(1, 0);
        }
    }

    internal static TapeObject Of(Phase phase, ImmutableArray<Point> holes)
    {
        var ground = new CellGround();
        var reach = phase.Spacing <= WidestRows ? Math.Max(CellGround.Side, (int)phase.Spacing / 2) : CellGround.Side;
        for (var i = phase.From; i <= phase.To; i++)
            ground.Lay(holes[Math.Max(phase.From, i - 1)], holes[i], reach);
        return new(phase.Kind, [(phase, PhaseUse.Main)], ground)
        {
            Box = Box.Around(holes.AsSpan(phase.From, phase.To - phase.From + 1)),
        };
    }

    /// <summary>Rows of one direction, equally dense, side by side.</summary>
    internal bool IsOneFillWith(TapeObject other) =>
        Kind == StitchKind.Fill
        && other.Kind == StitchKind.Fill
        && Math.Max(Spacing, other.Spacing) <= SameSpacing * Math.Min(Spacing, other.Spacing)
        && Math.Abs(Vector.Dot(Way, other.Way)) >= SameWay
        && Ground.Meets(other.Ground);

    /// <summary>
    /// This, with what was sewn right before it.
    /// </summary>
    /// <param name="use">What all that was seen of the others is now for; null leaves it.</param>
    internal TapeObject After(TapeObject before, PhaseUse? use) =>
        this with
        {
            Phases = [.. before.As(use), .. Phases],
            Ground = Joined(before.Ground, Ground),
            Box = Box.Joined(before.Box),
        };

    /// <summary>This, with what was sewn right after it.</summary>
    internal TapeObject Before(TapeObject after, PhaseUse? use) =>
        this with
        {
            Phases = [.. Phases, .. after.As(use)],
            Ground = Joined(after.Ground, Ground),
            Box = Box.Joined(after.Box),
        };

    private IEnumerable<(Phase, PhaseUse)> As(PhaseUse? use) =>
        Phases.Select(p => (p.Phase, p.Use == PhaseUse.Main && use is { } other ? other : p.Use));

    /// <summary>The larger one takes the smaller one in; nobody needs either for itself any more.</summary>
    private static CellGround Joined(CellGround one, CellGround other)
    {
        var (larger, smaller) = one.Count >= other.Count ? (one, other) : (other, one);
        larger.Add(smaller);
        return larger;
    }
}
