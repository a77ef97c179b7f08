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

/// <summary>What belongs together on a tape. Something else may be sewn between sections of a fill.</summary>
/// <param name="Phases">In sewing order.</param>
internal sealed record TapeObject(ImmutableArray<(LaidPhase Phase, PhaseUse Use)> Phases)
{
    /// <summary>Fill, satin or run: what most of its thread is sewn as.</summary>
    internal StitchKind Kind { get; } =
        Phases
            .Where(p => p.Use == PhaseUse.Main)
            .GroupBy(p => p.Phase.Kind)
            .OrderByDescending(kind => kind.Sum(p => p.Phase.Ground.Count))
            .ThenBy(kind => kind.Key)
            .First()
            .Key;

    /// <summary>Fills and columns of its kind.</summary>
    internal IEnumerable<Phase> Main =>
        Phases.Where(p => p.Use == PhaseUse.Main && p.Phase.Kind == Kind).Select(p => p.Phase.Phase);

    /// <summary>What the tape sews of it without moving the needle, or sewing anything else.</summary>
    internal IEnumerable<ImmutableArray<(LaidPhase Phase, PhaseUse Use)>> Stretches
    {
        get
        {
            for (int from = 0, to; from < Phases.Length; from = to)
            {
                for (to = from + 1; to < Phases.Length && GoesOn(Phases[to - 1].Phase.Phase, Phases[to].Phase.Phase); )
                    to++;
                yield return Phases[from..to];
            }
        }
    }

    private static bool GoesOn(Phase one, Phase other) => one.Thread == other.Thread && one.To == other.From;

    /// <summary>Mean distance of its passes, µm.</summary>
    internal double Spacing => Main.Sum(p => p.Spacing * p.Passes.Length) / Math.Max(1, Main.Sum(p => p.Passes.Length));

    /// <summary>The way of its rows, of length 1, to either side.</summary>
    internal Vector Way => Phase.WayOf(Main.SelectMany(p => p.Passes));

    /// <summary>All that it covers.</summary>
    internal CellGround Ground
    {
        get
        {
            var ground = new CellGround();
            foreach (var (phase, _) in Phases)
                ground.Add(phase.Ground);
            return ground;
        }
    }
}
