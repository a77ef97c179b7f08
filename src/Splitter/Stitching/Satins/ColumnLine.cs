using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Stitching.Satins;

/// <summary>
/// A column measured along its longer edge, where its stitches are to be evenly dense: from 0 to <see cref="Length"/> µm.
/// </summary>
internal sealed class ColumnLine
{
    private readonly ImmutableArray<Rung> rungs;
    private readonly double[] along;

    internal ColumnLine(Column column)
    {
        rungs = column.Rungs;
        along = new double[rungs.Length];
        for (var i = 1; i < rungs.Length; i++)
            along[i] =
                along[i - 1]
                + Math.Max(rungs[i - 1].Left.DistanceTo(rungs[i].Left), rungs[i - 1].Right.DistanceTo(rungs[i].Right));
        MeanWidth = rungs.Average(r => r.Width);
        Bounds = Box.Around(rungs.SelectMany(r => new[] { r.Left, r.Right }));
    }

    /// <summary>Length of the longer edge, section by section; µm.</summary>
    internal double Length => along[^1];

    /// <summary>Mean length of its rungs, µm.</summary>
    internal double MeanWidth { get; }

    internal Box Bounds { get; }

    /// <summary>Its end is its start.</summary>
    internal bool IsClosed => rungs[0] == rungs[^1];

    internal Rung At(double place)
    {
        var i = Section(place);
        return Between(i, place);
    }

    /// <summary>How fast the left and the right edge advance there, as shares of the longer one's advance.</summary>
    internal (double Left, double Right) Advance(double place)
    {
        var i = Section(place);
        var length = along[i + 1] - along[i];
        return length <= 0
            ? (1, 1)
            : (
                rungs[i].Left.DistanceTo(rungs[i + 1].Left) / length,
                rungs[i].Right.DistanceTo(rungs[i + 1].Right) / length
            );
    }

    /// <summary>The places of the rungs between two places, both of these included, in the direction from one to the other.</summary>
    internal IEnumerable<double> Places(double from, double to)
    {
        var inner = along.Where(a => a > Math.Min(from, to) && a < Math.Max(from, to)).Distinct();
        return [from, .. from <= to ? inner : inner.Reverse(), to];
    }

    private Rung Between(int i, double place)
    {
        var length = along[i + 1] - along[i];
        var share = length <= 0 ? 0 : Math.Clamp((place - along[i]) / length, 0, 1);
        return new(rungs[i].Left.Towards(rungs[i + 1].Left, share), rungs[i].Right.Towards(rungs[i + 1].Right, share));
    }

    /// <summary>Index of the rung before a place, which has one after it.</summary>
    private int Section(double place)
    {
        var i = Array.BinarySearch(along, place);
        return Math.Clamp(i >= 0 ? i : ~i - 1, 0, rungs.Length - 2);
    }
}
