using Splitter.Geometry;

namespace Splitter.Parts;

/// <summary>Where needle holes of a part have been put: none that shows is moved the same way twice.</summary>
internal sealed class MovedHoles
{
    /// <summary>Of holes that were moved a little.</summary>
    internal HashSet<Point> Aside { get; } = [];

    /// <summary>Of those where a column's stitch now ends earlier.</summary>
    internal HashSet<Point> Short { get; } = [];
}
