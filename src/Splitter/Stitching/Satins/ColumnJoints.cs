using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Stitching.Satins;

/// <summary>A place where the thread can pass from a column to another one under what is sewn later.</summary>
/// <param name="Place">On the column itself.</param>
/// <param name="Other">Number of the other column.</param>
/// <param name="OtherPlace">On the other column.</param>
internal readonly record struct Joint(double Place, int Other, double OtherPlace);

/// <summary>Finds where columns of one piece touch.</summary>
internal static class ColumnJoints
{
    /// <summary>Places along a column that are looked at, µm apart: near beside the width of a column.</summary>
    private const double Step = 500;

    /// <summary>
    /// Columns whose middles are this much further apart than half the width of the wider one may still touch, µm: they
    /// overlap at joints.
    /// </summary>
    private const int Slack = 300;

    /// <summary>For each column its joints, one with each column that it touches.</summary>
    internal static ImmutableArray<ImmutableArray<Joint>> Of(ImmutableArray<ColumnLine> columns, JointWays ways)
    {
        var samples = columns.Select(Samples).ToImmutableArray();
        var joints = columns.Select(_ => new List<Joint>()).ToArray();
        foreach (var (a, b) in BoxPairs.Meeting(columns.Select(c => c.Bounds.Grown(Slack))))
            if (Nearest(samples[a], samples[b], ways) is { } found)
            {
                joints[a].Add(new(found.One, b, found.Other));
                joints[b].Add(new(found.Other, a, found.One));
            }
        return [.. joints.Select(j => j.ToImmutableArray())];
    }

    private static ImmutableArray<Sample> Samples(ColumnLine column)
    {
        var count = Math.Max(1, (int)Math.Ceiling(column.Length / Step));
        return
        [
            .. Enumerable
                .Range(0, count + 1)
                .Select(k => column.Length * k / count)
                .Select(place => new Sample(place, column.At(place).Middle, column.At(place).Width / 2)),
        ];
    }

    private static (double One, double Other)? Nearest(
        ImmutableArray<Sample> ofOne,
        ImmutableArray<Sample> ofOther,
        JointWays ways
    )
    {
        var (best, places) = (double.PositiveInfinity, ((double, double)?)null);
        foreach (var one in ofOne)
        foreach (var other in ofOther)
        {
            var distance = one.Middle.DistanceTo(other.Middle);
            if (
                distance < best
                && distance <= Math.Max(one.Half, other.Half) + Slack
                && ways.IsCovered(one.Middle, other.Middle)
            )
                (best, places) = (distance, (one.Place, other.Place));
        }
        return places;
    }

    private readonly record struct Sample(double Place, Point Middle, double Half);
}
