using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Checking;

/// <summary>A line of thread between two needle holes, on the drawing.</summary>
internal readonly record struct SewnStitch(Point From, Point To)
{
    internal static List<SewnStitch> Of(ImmutableArray<SewnRun> runs) =>
        [.. runs.SelectMany(r => r.Points.Zip(r.Points.Skip(1), (from, to) => new SewnStitch(from, to)))];

    /// <summary>
    /// Those that the others do not have, in order, whichever way they are sewn; each of the others counts once.
    /// </summary>
    internal static List<SewnStitch> Without(List<SewnStitch> stitches, List<SewnStitch> others)
    {
        var left = new Dictionary<SewnStitch, int>();
        foreach (var other in others.Select(Directed))
            left[other] = left.GetValueOrDefault(other) + 1;
        var only = new List<SewnStitch>();
        foreach (var stitch in stitches)
        {
            var key = Directed(stitch);
            if (left.GetValueOrDefault(key) is > 0 and var count)
                left[key] = count - 1;
            else
                only.Add(stitch);
        }
        return only;
    }

    /// <summary>Stitches that go on from one another as one line.</summary>
    internal static IEnumerable<ImmutableArray<Point>> Lines(List<SewnStitch> stitches)
    {
        var line = ImmutableArray.CreateBuilder<Point>();
        foreach (var stitch in stitches)
        {
            if (line.Count > 0 && line[^1] != stitch.From)
            {
                yield return line.ToImmutable();
                line.Clear();
            }
            if (line.Count == 0)
                line.Add(stitch.From);
            line.Add(stitch.To);
        }
        if (line.Count > 0)
            yield return line.ToImmutable();
    }

    private static SewnStitch Directed(SewnStitch stitch) =>
        stitch.From.CompareTo(stitch.To) <= 0 ? stitch : new(stitch.To, stitch.From);
}
