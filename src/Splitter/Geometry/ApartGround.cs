using System.Collections.Immutable;

namespace Splitter.Geometry;

/// <summary>
/// Divides ground of very many polygons into such that have nothing to do with each other. The engine compares each
/// outline that it offsets with all others, near or far: of thousands of dashes that takes seconds.
/// </summary>
internal static class ApartGround
{
    /// <summary>
    /// So many polygons are handed to the engine together, more only where they lie near each other: few enough that
    /// comparing all of them is nothing, and many enough that calls do not count.
    /// </summary>
    internal const int Together = 32;

    /// <summary>
    /// The same polygons in several regions, of which no two come near each other. Ground of few polygons stays as it
    /// is.
    /// </summary>
    /// <param name="reach">How far each polygon's box reaches beyond it, µm.</param>
    internal static IEnumerable<Region> Of(Region region, int reach)
    {
        if (region.Polygons.Length <= Together)
            return [region];
        var group = Groups([.. region.Polygons.Select(p => p.Outer.Bounds.Grown(reach))]);
        var apart = new List<Region>();
        var next = ImmutableArray.CreateBuilder<Polygon>();
        foreach (var near in region.Polygons.Index().GroupBy(p => group[p.Index], p => p.Item))
        {
            next.AddRange(near);
            if (next.Count < Together)
                continue;
            apart.Add(new(next.ToImmutable()));
            next.Clear();
        }
        if (next.Count > 0)
            apart.Add(new(next.ToImmutable()));
        return apart;
    }

    /// <summary>For each box the number of its group: boxes that meet, or others that meet both, are in one.</summary>
    private static int[] Groups(ImmutableArray<Box> boxes)
    {
        int[] group = [.. Enumerable.Range(0, boxes.Length)];
        // From left to right, with those that reach as far.
        var open = new List<int>();
        foreach (var box in Enumerable.Range(0, boxes.Length).OrderBy(i => boxes[i].Left))
        {
            open.RemoveAll(other => boxes[other].Right < boxes[box].Left);
            foreach (var other in open)
                if (boxes[other].Meets(boxes[box]))
                    group[Root(other)] = Root(box);
            open.Add(box);
        }
        return [.. Enumerable.Range(0, boxes.Length).Select(Root)];

        int Root(int box)
        {
            while (group[box] != box)
                box = group[box] = group[group[box]];
            return box;
        }
    }
}
