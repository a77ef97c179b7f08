using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Stitching;

/// <summary>What every stitch must keep to, whatever it is for, and how a path is brought to keep to it.</summary>
internal static class StitchRules
{
    /// <summary>
    /// Longest stitch, µm. One record of the tape moves at most 121 steps of 0.1 mm each way; a longer move is no
    /// stitch any more but jumps. Held to the length, not only to each axis, so that a turned field sews the same
    /// stitches.
    /// </summary>
    internal const int Longest = 121 * Units.TapeStep;

    /// <summary>
    /// Shortest stitch, µm, ties aside. The needle goes in beside its last hole and frays thread and cloth when
    /// stitches are shorter; outlines lose detail when the bound is larger. Common practice, no source: 0.3 to 0.5 mm.
    /// </summary>
    internal const int Shortest = 300;

    /// <summary>
    /// Widest satin stitch, µm. A longer one lies loose and catches; narrower bounds show splits where a plain column
    /// would do. Common practice, no source.
    /// </summary>
    internal const int WidestSatin = 8 * Units.Millimetre;

    /// <summary>
    /// Narrowest satin that reaches past its edges by the whole pull, µm: a narrower column would come out wider than
    /// it is drawn, and its end blunt. Twice <see cref="Shortest"/>.
    /// </summary>
    internal const int NarrowestSatin = 2 * Shortest;

    /// <summary>
    /// What two stitch ends lose or gain together by going to the tape's grid, µm: each moves up to 0.07 mm. Lengths
    /// that are planned this much inside a bound keep to it on the grid.
    /// </summary>
    internal const double GridSlack = 150;

    /// <summary>
    /// The path on the tape's grid with no stitch shorter than <see cref="Shortest"/> and none longer than
    /// <see cref="Longest"/>. First and last places stay; of crowded ones between, the first stays. A path that is all
    /// within one short stitch comes back as its first place alone.
    /// </summary>
    internal static ImmutableArray<Stitch> Sewable(IEnumerable<Stitch> path) => Split(Thinned(path));

    /// <summary>Drops places that lie too near to the one before.</summary>
    internal static ImmutableArray<Stitch> Thinned(IEnumerable<Stitch> path)
    {
        var kept = ImmutableArray.CreateBuilder<Stitch>();
        Stitch? crowded = null;
        foreach (var stitch in path.Select(s => s with { At = s.At.OnTape() }))
        {
            crowded = kept.Count > 0 && kept[^1].At.DistanceTo(stitch.At) < Shortest ? stitch : null;
            if (crowded is null)
                kept.Add(stitch);
        }

        // The end stays where it is: what crowds it goes instead.
        if (crowded is { } end)
        {
            while (kept.Count > 1 && kept[^1].At.DistanceTo(end.At) < Shortest)
                kept.RemoveAt(kept.Count - 1);
            if (kept[^1].At.DistanceTo(end.At) >= Shortest)
                kept.Add(end);
        }
        return kept.ToImmutable();
    }

    /// <summary>Divides stitches that are too long into equal ones; their use stays.</summary>
    /// <param name="longest">µm.</param>
    internal static ImmutableArray<Stitch> Split(ImmutableArray<Stitch> path, double longest = Longest)
    {
        var split = ImmutableArray.CreateBuilder<Stitch>(path.Length);
        foreach (var stitch in path)
        {
            var from = split.Count > 0 ? split[^1].At : stitch.At;
            var length = from.DistanceTo(stitch.At);
            var count = length <= longest ? 1 : (int)Math.Ceiling(length / (longest - GridSlack));
            for (var k = 1; k <= count; k++)
                split.Add(stitch with { At = from.Towards(stitch.At, (double)k / count).OnTape() });
        }
        return split.ToImmutable();
    }
}
