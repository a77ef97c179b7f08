using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Stitching.Satins;

/// <summary>A place where the thread can pass from one column to another under what is sewn later.</summary>
internal readonly record struct Joint(int A, double PlaceA, int B, double PlaceB);

/// <summary>Finds where columns of one piece touch.</summary>
internal static class ColumnJoints
{
    /// <summary>Places along a column that are looked at, µm apart: near beside the width of a column.</summary>
    private const double Step = 500;

    /// <summary>Columns whose middles are this much further apart than half their widths still touch, µm: they overlap at joints.</summary>
    private const double Slack = 300;

    /// <summary>One joint for each pair of columns that touch, by the numbers of the columns.</summary>
    internal static ImmutableArray<Joint> Of(ImmutableArray<ColumnLine> columns)
    {
        var samples = columns.Select(Samples).ToImmutableArray();
        return
        [
            .. from a in Enumerable.Range(0, columns.Length)
            from b in Enumerable.Range(a + 1, columns.Length - a - 1)
            where columns[a].Bounds.Grown((int)Slack).Meets(columns[b].Bounds)
            let joint = Nearest(a, samples[a], b, samples[b])
            where joint is not null
            select joint.Value,
        ];
    }

    private static ImmutableArray<(double Place, Point Middle, double Half)> Samples(ColumnLine column)
    {
        var count = Math.Max(1, (int)Math.Ceiling(column.Length / Step));
        return
        [
            .. Enumerable
                .Range(0, count + 1)
                .Select(k => column.Length * k / count)
                .Select(place => (place, column.At(place).Middle, column.At(place).Width / 2)),
        ];
    }

    private static Joint? Nearest(
        int a,
        ImmutableArray<(double Place, Point Middle, double Half)> ofA,
        int b,
        ImmutableArray<(double Place, Point Middle, double Half)> ofB
    )
    {
        var (best, joint) = (double.PositiveInfinity, (Joint?)null);
        foreach (var one in ofA)
        foreach (var other in ofB)
        {
            // Within the wider of the two: then the straight way between the middles runs under satin.
            var distance = one.Middle.DistanceTo(other.Middle);
            if (distance < best && distance <= Math.Max(one.Half, other.Half) + Slack)
                (best, joint) = (distance, new(a, one.Place, b, other.Place));
        }
        return joint;
    }
}
