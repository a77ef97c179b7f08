using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Artwork.Sewing;

/// <summary>
/// Shapes whose thread has nearly the colour of the cloth around them: sewn with care, and not seen. What has thread of
/// another colour along enough of its edge is seen by that; what lies on it shows where it is, but not its outline.
/// </summary>
internal static class UnseenShapes
{
    /// <summary>
    /// Colours no further apart than this in dE*ab are nearly the same. Some 2.3 are just noticed on flat colour (Mahy,
    /// Van Eycken, Oosterlinck, "Evaluation of uniform color spaces", 1994; from memory); cloth and thread have a
    /// texture, so twice that.
    /// </summary>
    private const double Alike = 5;

    /// <summary>Shapes no further apart than this are side by side, µm: about a thread's width.</summary>
    private const int Beside = 500;

    /// <summary>
    /// With so much of its edge beside other colours, as a share, a shape is seen. A leaf that a stem touches is not, a
    /// roof on its wall is. Common practice, no source.
    /// </summary>
    private const double EnoughEdge = 0.25;

    /// <summary>One line for each thread. Nothing is told of cloth whose colour the recipe does not give.</summary>
    internal static IEnumerable<Diagnostic> On(
        Recipe recipe,
        ImmutableArray<SewThread> threads,
        ImmutableArray<Shape> shapes
    )
    {
        if (!recipe.Places.ContainsKey("cloth.color"))
            yield break;
        var cloth = recipe.Cloth.Color;
        var unseen = threads.Select(t => ColourDifference.Between(t.Color, cloth) <= Alike).ToImmutableArray();
        var seen = shapes.RemoveAll(s => unseen[s.Thread]);
        foreach (
            var alike in shapes
                .Where(s => unseen[s.Thread])
                .GroupBy(s => s.Thread)
                .Select(g => g.Where(s => !IsBeside(s, seen)).ToList())
        )
            if (alike is [var first, ..])
                yield return DrawingProblems.LikeCloth(
                    first.Place,
                    first.Id,
                    alike.Count - 1,
                    threads[first.Thread].Color,
                    cloth
                );
    }

    private static bool IsBeside(Shape shape, ImmutableArray<Shape> others)
    {
        var near = shape.Footprint.Bounds.Grown(Beside);
        var meeting = others.Where(o => o.Footprint.Bounds.Meets(near)).Select(o => o.Footprint).ToList();
        if (meeting.Count == 0)
            return false;
        var around = Polygons.Subtract(Polygons.Offset(shape.Footprint, Beside), shape.Footprint);
        return Polygons.Intersect(around, Polygons.Union(meeting)).Area >= EnoughEdge * around.Area;
    }
}
