using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>A stretch of boundary between two labels, from one place where more meet to the next, or closed.</summary>
/// <param name="Right">The field on its right as one walks along it.</param>
/// <param name="Left">The field on its left, or <see cref="ArcTracer.Outside"/>.</param>
internal sealed record SeamArc(int Right, int Left, ImmutableArray<Point> Points)
{
    internal bool IsSeam => Left != ArcTracer.Outside;
}

/// <summary>An outline of a territory: arcs in turn, some walked backwards.</summary>
internal sealed record ArcRing(int Field, ImmutableArray<(int Arc, bool Forward)> Arcs);
