using Splitter.Cutting.Tapes;
using Splitter.Geometry;
using Splitter.Parts;

namespace Splitter.Tests.Cutting.Tapes;

/// <summary>Looks at the stitches of all parts: nothing lies over what was sewn over it on the tape.</summary>
internal static class LayersInOrder
{
    /// <summary>Nearer to a stitch than half of it, a place is covered by its thread, µm.</summary>
    private const int Thread = 200;

    /// <summary>The later part sews the upper layer again if it does so within a row's distance, µm.</summary>
    private const int Again = 500;

    private const double Step = 500;

    /// <summary>A place of the upper layer that a later part covers with the lower one, and does not sew again.</summary>
    internal static IEnumerable<Point> Turned(PartSet set, string lower, string upper)
    {
        var parts = set.Parts.Select(p => (Lower: Stitches(p, lower), Upper: Stitches(p, upper))).ToList();
        for (var later = 1; later < parts.Count; later++)
            foreach (var (from, to) in parts[..later].SelectMany(p => p.Upper))
                for (var way = 0.0; way <= from.DistanceTo(to); way += Step)
                    if (
                        from.Towards(to, way / Math.Max(1, from.DistanceTo(to))) is var at
                        && LiesAt(parts[later].Lower, at, Thread)
                        && !LiesAt(parts[later].Upper, at, Again)
                    )
                        yield return at;
    }

    private static bool LiesAt(List<(Point From, Point To)> stitches, Point at, int by) =>
        stitches.Exists(s => Polygons.Distance(at, at, s.From, s.To) <= by);

    private static List<(Point From, Point To)> Stitches(Part part, string thread) =>
        [
            .. from step in part.Steps
            where step.Kind == StepKind.Body && step.Thread!.Name == thread
            from move in step.Moves
            from stitch in move.Block.Stitches.Zip(move.Block.Stitches.Skip(1))
            where stitch.Second.Source != StitchSource.Made
            select (stitch.First.At, stitch.Second.At),
        ];
}
