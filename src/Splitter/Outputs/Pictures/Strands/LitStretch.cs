using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Outputs.Pictures.Strands;

/// <summary>Stitches one after the other that the light falls on alike: from one needle hole to another.</summary>
internal readonly record struct LitStretch(int First, int Last, ThreadLight Light)
{
    /// <summary>A shorter stitch, µm, takes the light of those beside it: it is hardly longer than wide.</summary>
    private const double Shortest = 600;

    /// <summary>
    /// Fewer stitches make no stretch of their own: a turn between rows, or every other stitch of a column's zigzag.
    /// </summary>
    private const int Fewest = 3;

    /// <param name="sewn">Needle holes in sewing order.</param>
    internal static ImmutableArray<LitStretch> Of(ImmutableArray<Point> sewn)
    {
        var stitches = new LitStitch[sewn.Length - 1];
        for (var i = 0; i < stitches.Length; i++)
            stitches[i] = LitStitch.Of(sewn[i], sewn[i + 1]);
        var turns = new List<int> { 0 };
        foreach (var (first, last) in Directions(stitches))
            if (last - first >= Fewest && first > 0 && !LightOn(turns[^1], first).IsLike(LightOn(first, last)))
                turns.Add(first);
        return
        [
            .. turns
                .Zip(turns.Skip(1).Append(sewn.Length - 1))
                .Select(s => new LitStretch(s.First, s.Second, LightOn(s.First, s.Second))),
        ];

        ThreadLight LightOn(int first, int last) => LitStitch.Mean(stitches.AsSpan()[first..last]);
    }

    /// <summary>Split wherever the light changes.</summary>
    private static IEnumerable<(int First, int Last)> Directions(LitStitch[] stitches)
    {
        var first = 0;
        ThreadLight? light = null;
        for (var i = 0; i < stitches.Length; i++)
        {
            if (stitches[i].Length < Shortest)
                continue;
            var here = stitches[i].Light;
            if (light is { } before && !before.IsLike(here))
            {
                yield return (first, i);
                (first, light) = (i, here);
            }
            light ??= here;
        }
        yield return (first, stitches.Length);
    }
}
