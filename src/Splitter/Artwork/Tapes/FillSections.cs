using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Artwork.Tapes;

/// <summary>What is sewn in one go of a group of phases.</summary>
/// <param name="Section">The number of the fill that it is a section of; null for all else.</param>
/// <param name="Phases">Numbers of the first and of the one behind the last.</param>
internal sealed record SewnStretch(int? Section, Range Phases);

/// <summary>
/// Sections of one fill are one shape whatever is sewn between them: each part keeps the tape's order anyway, and a
/// seam along their common edge overlaps as one across rows does. All of a colour block is of one thread, so
/// what lies over one section and under another hardly shows where parts turn that round.
/// </summary>
internal static class FillSections
{
    /// <summary>
    /// Neighbours overlap by as much, µm, so that no cloth shows between: one does not lie over the other for that. By
    /// eye, no source.
    /// </summary>
    private const int EdgeOverlap = 1500;

    /// <summary>
    /// Stretches of the same object together, as far as planning sees from the one that lies lowest up.
    /// </summary>
    internal static IEnumerable<ImmutableArray<SewnStretch>> Joined(
        ImmutableArray<SewnStretch> stretches,
        ImmutableArray<LaidPhase> phases
    )
    {
        var objects = Enumerable
            .Range(0, stretches.Length)
            .GroupBy(i => stretches[i].Section is { } fill ? (fill, -1) : (-1, i))
            .Select(of => of.ToImmutableArray());
        return objects
            .OrderBy(of => LiesOver(of, stretches, phases) ? of[^1] : of[0])
            .Select(of => of.Select(i => stretches[i]).ToImmutableArray());
    }

    /// <summary>
    /// Something that is sewn between sections lies under one, and nothing over any. Lines do not matter: of the same
    /// thread, they hardly show on rows.
    /// </summary>
    private static bool LiesOver(
        ImmutableArray<int> sections,
        ImmutableArray<SewnStretch> stretches,
        ImmutableArray<LaidPhase> phases
    )
    {
        if (sections.Length == 1)
            return false;
        var (sewn, between, isOver) = (new CellGround(), new CellGround(), false);
        for (var i = sections[0]; i <= sections[^1]; i++)
        {
            var rows = phases[stretches[i].Phases].Where(p => p.Kind != StitchKind.Run).Select(p => p.Ground);
            if (stretches[i].Section is { } fill && fill == stretches[sections[0]].Section)
                foreach (var inner in rows.Select(ground => ground.Inner(EdgeOverlap)))
                {
                    isOver |= inner.Meets(between);
                    sewn.Add(inner);
                }
            else
                foreach (var ground in rows)
                {
                    if (ground.Meets(sewn))
                        return false;
                    between.Add(ground);
                }
        }
        return isOver;
    }
}
