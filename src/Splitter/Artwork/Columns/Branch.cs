using Splitter.Geometry;

namespace Splitter.Artwork.Columns;

/// <summary>
/// Two outline points (by index) that face each other across the ground, as one walks along the centre line.
/// </summary>
internal readonly record struct Facing(int Left, int Right)
{
    internal Facing Turned => new(Right, Left);
}

/// <summary>An unbranched stretch of a skeleton: the facing points that one passes along it.</summary>
internal sealed class Branch(InnerTriangles ground, List<Facing> steps)
{
    /// <summary>Marks an end that meets no joint: it lies at the outline's own end.</summary>
    internal const int Free = -1;

    /// <summary>
    /// How far back from an end its direction is measured, in widths of the end: less is noise, more is the bend before
    /// it.
    /// </summary>
    private const double DirectionReach = 0.75;

    internal List<Facing> Steps { get; } = steps;

    /// <summary>The joint at the first step, or <see cref="Free"/>.</summary>
    internal int StartJoint { get; init; } = Free;

    /// <summary>The joint at the last step, or <see cref="Free"/>.</summary>
    internal int EndJoint { get; init; } = Free;

    /// <summary>It runs into itself without a joint.</summary>
    internal bool Closed { get; init; }

    internal Branch Reversed() =>
        new(ground, [.. Steps.AsEnumerable().Reverse().Select(s => s.Turned)])
        {
            StartJoint = EndJoint,
            EndJoint = StartJoint,
            Closed = Closed,
        };

    internal Rung At(int step) => new(ground.Points[Steps[step].Left], ground.Points[Steps[step].Right]);

    internal Rung Last => At(Steps.Count - 1);

    /// <summary>The unit direction in which the branch leaves over its last step.</summary>
    internal Vector Heading
    {
        get
        {
            var last = Last;
            var reach = DirectionReach * last.Width;
            for (var i = Steps.Count - 2; i >= 0; i--)
                if (At(i).Middle.DistanceTo(last.Middle) >= reach)
                    return Vector.Between(At(i).Middle, last.Middle).Unit;
            var across = Vector.Between(last.Left, last.Right).Unit.Left;
            return Blend(across, Vector.Between(At(0).Middle, last.Middle), reach);
        }
    }

    /// <summary>A short branch's direction: across its last step, as far as it does not show one of its own.</summary>
    private static Vector Blend(Vector across, Vector along, double reach)
    {
        var share = along.Length / reach;
        return along.Length == 0 ? across : ((along.Unit * share) + (across * (1 - share))).Unit;
    }
}
