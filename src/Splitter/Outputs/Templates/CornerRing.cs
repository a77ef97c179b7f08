using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;

namespace Splitter.Outputs.Templates;

/// <summary>The ring around the hole of a corner.</summary>
internal static class CornerRing
{
    /// <param name="dashed">The part sews it last, for later ones.</param>
    internal static void Draw(Canvas canvas, Point at, bool dashed)
    {
        var ring = Circle.Around(at, TemplateInk.Ring);
        ImmutableArray<Point> closed = [.. ring, ring[0]];
        canvas.Lines(
            TemplateInk.Fine,
            MarkInk.Corner,
            100,
            dashed ? Dashed.Cut(closed, TemplateInk.Ring / 3, TemplateInk.Ring / 3) : [closed]
        );
    }
}
