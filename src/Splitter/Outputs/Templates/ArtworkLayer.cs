using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Outputs.Pdf;
using Splitter.Outputs.Pictures;
using Splitter.Planning;
using Splitter.Planning.Seams;

namespace Splitter.Outputs.Templates;

/// <summary>Outlines of the artwork, pale, and the seams: what every sheet shows a piece of.</summary>
internal static class ArtworkLayer
{
    /// <summary>Outlines leave the shape's edge by no more than this, µm: less than their own width.</summary>
    private const double Detail = 50;

    internal static PdfLayer Of(Drawing drawing, Plan plan)
    {
        var canvas = new Canvas();
        foreach (var shape in drawing.Shapes)
            if (Outlines(shape) is { IsEmpty: false } lines)
                canvas.Lines(TemplateInk.Fine, TemplateInk.Artwork, 100, lines);
        var seams = SeamStretches.Of(drawing, plan);
        foreach (var seam in seams.Where(s => s.Ground != SeamGround.Whole))
            if (seam.Ground == SeamGround.Bare)
                canvas.Dashes(TemplateInk.Fine, TemplateInk.Dash, TemplateInk.Seam, seam.Line.Points.AsSpan());
            else
                canvas.Line(TemplateInk.Strong, TemplateInk.Seam, 100, seam.Line.Points.AsSpan());
        var bounds = drawing.Bounds.Joined(Box.Around(seams.Select(s => s.Line.Bounds)));
        return new(bounds.Grown(TemplateInk.Strong), canvas.ToItems());
    }

    /// <summary>A run is a line, anything else has an edge.</summary>
    private static ImmutableArray<ImmutableArray<Point>> Outlines(Shape shape) =>
        shape is RunShape run
            ? [.. run.Lines.Select(l => l.Points)]
            : [.. Polygons.Simplify(shape.Footprint, Detail).Rings.Select(r => r.ToPolyline().Points)];
}
