using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;
using Splitter.Stitching.Density;

namespace Splitter.Checking.Inspecting;

/// <summary>Layers of thread on every square millimetre, in classes, and a ring around the fullest.</summary>
internal sealed class DensityPicture(TapePage page)
{
    private const int RingRadius = 1600;

    internal void Draw(ThreadGrid grid, Square fullest)
    {
        // Each class over all that have as much or more: between two colours nothing else shows.
        foreach (var of in LayerScale.Classes)
            page.Canvas.Area(
                [.. Outlines(grid.Quarters.Where(q => grid.LayersAt(q) > of.From)).Select(page.Lay)],
                of.Colour
            );
        Ring(page.Lay(fullest.Middle));
    }

    private static ImmutableArray<ImmutableArray<Point>> Outlines(IEnumerable<Quarter> quarters) =>
        CellOutlines.Of([.. quarters.Select(q => new Cell(q.Column, q.Row))], Quarter.Side);

    internal void RingSign(Point left) => Ring(left with { X = left.X + TapePage.SwatchWidth / 2 });

    private void Ring(Point at)
    {
        page.Canvas.Ring(at, RingRadius, 700, Colour.White);
        page.Canvas.Ring(at, RingRadius, 350, MarkInk.Corner);
    }
}
