using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Outputs.Pdf;
using Splitter.Outputs.Pictures;
using Splitter.Planning.Seams;

namespace Splitter.Outputs.Templates;

/// <summary>Outlines of the artwork, pale, and the seams: what every sheet shows a piece of.</summary>
internal static class ArtworkLayer
{
    /// <summary>
    /// Outlines of artwork that is stitches leave the shape's edge by no more than this, µm: about a row.
    /// </summary>
    private const double StitchedDetail = 400;

    /// <summary>Rows below others leave such gaps on either side of them, µm. Common practice, no source.</summary>
    private const double OpenRows = 1600;

    /// <summary>Edges of thread that are shorter are gaps between stitches, or ties, µm. By eye, no source.</summary>
    private const int LeastStitched = 5 * Units.Millimetre;

    internal static PdfLayer Of(ShownGround ground)
    {
        var canvas = new Canvas();
        foreach (var (shape, outline) in ground.Drawing.Shapes.Zip(ground.Outlines))
            if (Outlines(shape, outline) is { IsEmpty: false } lines)
                canvas.Lines(TemplateInk.Fine, TemplateInk.Artwork, 100, lines);
        foreach (var seam in ground.Seams.Where(s => s.Ground != SeamGround.Whole))
            if (seam.Ground == SeamGround.Bare)
                canvas.Dashes(TemplateInk.Fine, TemplateInk.Dash, TemplateInk.Seam, seam.Line.Points.AsSpan());
            else
                canvas.Line(TemplateInk.Strong, TemplateInk.Seam, 100, seam.Line.Points.AsSpan());
        var bounds = ground.Drawing.Bounds.Joined(Box.Around(ground.Seams.Select(s => s.Line.Bounds)));
        return new(bounds.Grown(TemplateInk.Strong), canvas.ToItems());
    }

    /// <summary>
    /// A run is a line, anything else has an edge. Of a tape only what is long enough to find it by: its edges are as
    /// uneven as stitches are, and a line that goes to and fro is no outline.
    /// </summary>
    private static ImmutableArray<ImmutableArray<Point>> Outlines(Shape shape, Region outline)
    {
        if (!shape.Original.IsEmpty)
            return
            [
                .. Polygons
                    .Simplify(Closed(shape), StitchedDetail)
                    .Rings.Where(r => Math.Max(r.Bounds.Width, r.Bounds.Height) >= LeastStitched)
                    .Select(r => r.ToPolyline().Points),
            ];
        return shape is RunShape run
            ? [.. run.Lines.Select(l => l.Points)]
            : [.. outline.Rings.Select(r => r.ToPolyline().Points)];
    }

    /// <summary>The ground of a shape; of a fill that came as stitches with the gaps between its open rows.</summary>
    internal static Region Closed(Shape shape) =>
        shape is FillShape { Original.IsEmpty: false }
            ? Polygons.Offset(Polygons.Offset(shape.Footprint, OpenRows), -OpenRows)
            : shape.Footprint;
}
