using Splitter.Geometry;

namespace Splitter.Parts;

/// <summary>Where needle holes of a part have been put: none that shows is moved the same way twice.</summary>
internal sealed class MovedHoles
{
    /// <summary>From where holes that were moved a little lie now to where they lay at first.</summary>
    private readonly Dictionary<Point, Point> aside = [];

    internal bool IsAside(Point at) => aside.ContainsKey(at);

    /// <summary>Where a hole lay before it was moved, however often.</summary>
    internal Point First(Point at) => aside.GetValueOrDefault(at, at);

    internal void PutAside(Point from, Point to) => aside[to] = First(from);

    /// <summary>Places of holes where a column's stitch now ends earlier.</summary>
    internal HashSet<Point> Short { get; } = [];
}
