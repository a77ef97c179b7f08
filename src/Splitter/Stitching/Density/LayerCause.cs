using Splitter.Geometry;

namespace Splitter.Stitching.Density;

/// <summary>Why more thread lies on a square millimetre than cloth and needle bear.</summary>
internal enum LayerCause
{
    /// <summary>
    /// Rows, columns and lines of several shapes alone: the artwork has them there, and none hides so much of another
    /// that it is cut away.
    /// </summary>
    Shapes,

    /// <summary>Rows or columns of one shape alone: they come together there.</summary>
    Rows,

    /// <summary>Rows, columns and lines alone, but without those of a second part they are not too many.</summary>
    Overlap,

    /// <summary>Hidden travel, more than any other thread that comes to rows, columns and lines.</summary>
    Travel,

    /// <summary>The same of underlay.</summary>
    Underlay,

    /// <summary>The same of ties.</summary>
    Ties,
}

/// <summary>Whose thread lies on a square, and what for.</summary>
/// <param name="Shape">Its place in the drawing.</param>
internal readonly record struct ThreadOwner(int Shape, int Hooping, StitchUse Use);

/// <summary>Tells causes apart.</summary>
internal static class LayerCauses
{
    /// <param name="thread">On one square, µm²; too much.</param>
    /// <param name="limit">Layers that cloth and needle bear.</param>
    internal static LayerCause Of(IReadOnlyDictionary<ThreadOwner, long> thread, int limit)
    {
        var most = limit * (long)Units.SquareMillimetre;
        var shown = thread.Where(t => CauseOf(t.Key.Use) is null).ToList();
        if (shown.Sum(t => t.Value) <= most)
            return thread
                .Where(t => CauseOf(t.Key.Use) is not null)
                .GroupBy(t => CauseOf(t.Key.Use)!.Value, t => t.Value)
                .OrderByDescending(sum => sum.Sum())
                .ThenBy(sum => sum.Key)
                .First()
                .Key;
        return Largest(owner => owner.Hooping) <= most ? LayerCause.Overlap
            : Largest(owner => owner.Shape) <= most ? LayerCause.Shapes
            : LayerCause.Rows;

        long Largest(Func<ThreadOwner, int> of) => shown.GroupBy(t => of(t.Key), t => t.Value).Max(sum => sum.Sum());
    }

    /// <summary>Of most square millimetres.</summary>
    internal static LayerCause Chief(IEnumerable<DenseSpot> spots) =>
        spots
            .SelectMany(spot => spot.Causes)
            .GroupBy(cause => cause)
            .OrderByDescending(squares => squares.Count())
            .ThenBy(squares => squares.Key)
            .First()
            .Key;

    /// <summary>Null for what shows.</summary>
    private static LayerCause? CauseOf(StitchUse use) =>
        use switch
        {
            StitchUse.Travel => LayerCause.Travel,
            StitchUse.Underlay => LayerCause.Underlay,
            StitchUse.Tie => LayerCause.Ties,
            _ => null,
        };
}
