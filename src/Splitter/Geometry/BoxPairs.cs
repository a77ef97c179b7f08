using NetTopologySuite.Geometries;
using NetTopologySuite.Index.Strtree;

namespace Splitter.Geometry;

/// <summary>Finds boxes that meet without trying every pair.</summary>
internal static class BoxPairs
{
    /// <summary>Pairs of indexes, the smaller first, in ascending order.</summary>
    internal static IEnumerable<(int A, int B)> Meeting(IEnumerable<Box> boxes)
    {
        var envelopes = boxes.Select(b => new Envelope(b.Left, b.Right, b.Top, b.Bottom)).ToList();
        var tree = new STRtree<int>();
        for (var i = 0; i < envelopes.Count; i++)
            tree.Insert(envelopes[i], i);
        for (var a = 0; a < envelopes.Count; a++)
            // The tree answers in its own order.
            foreach (var b in tree.Query(envelopes[a]).Where(b => b > a).Order())
                yield return (a, b);
    }
}
