using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;

namespace Splitter.Outputs.Templates;

/// <summary>Which sheet lies where: on the cover with the artwork, in every sheet's head as a small sign.</summary>
internal static class SheetMap
{
    /// <summary>Outlines on the map leave the shape's edge by no more than this on paper, µm.</summary>
    private const double Detail = 150;

    private const int Hair = 90;

    /// <summary>Share of a cell's smaller side that its number is high.</summary>
    private const int NumberShare = 4;

    private static readonly Colour Absent = Colour.Of("#c9ced2");

    /// <summary>As large as fits into a box of the page; returns what it takes.</summary>
    internal static Box Draw(Canvas canvas, Drawing drawing, Tiling tiling, string leftOut, Box room)
    {
        var all = Box.Around(tiling.Sheets.Select(s => s.Own));
        var scale = Math.Min((double)room.Width / all.Width, (double)room.Height / all.Height);
        foreach (var shape in drawing.Shapes)
        {
            var outlines = Polygons.Simplify(ArtworkLayer.Closed(shape), Detail / scale).Rings;
            canvas.Lines(
                Hair,
                TemplateInk.Artwork,
                100,
                [.. outlines.Select(r => r.ToPolyline().Points.Select(Laid)).Select(l => l.ToImmutableArray())]
            );
        }
        foreach (var sheet in tiling.Sheets)
        {
            var cell = LaidBox(sheet.Own);
            var letters = Math.Min(Math.Min(cell.Width, cell.Height) / NumberShare, TemplateInk.LargeLetters);
            if (sheet.Number == 0)
            {
                canvas.Line(TemplateInk.Fine, Absent, 100, new(cell.Left, cell.Bottom), new(cell.Right, cell.Top));
                canvas.Label(
                    leftOut,
                    new(cell.Centre.X, cell.Centre.Y + (letters / 4)),
                    Math.Min(TemplateInk.SmallLetters, letters / 2),
                    TemplateInk.Artwork,
                    Side.Middle
                );
            }
            else
                canvas.Label(
                    Figures.Count(sheet.Number),
                    new(cell.Centre.X, cell.Centre.Y + (letters / 2)),
                    letters,
                    Colour.Ink,
                    Side.Middle
                );
            canvas.Outline(cell, TemplateInk.Strong, Colour.Ink);
        }
        return LaidBox(all);

        Point Laid(Point p) =>
            new(
                room.Left + Units.Round((p.X - (double)all.Left) * scale),
                room.Top + Units.Round((p.Y - (double)all.Top) * scale)
            );
        Box LaidBox(Box b) => Box.Around([Laid(new Point(b.Left, b.Top)), Laid(new Point(b.Right, b.Bottom))]);
    }

    /// <summary>All sheets of a board as small boxes, this one filled.</summary>
    /// <param name="corner">The sign's upper right corner.</param>
    internal static void Sign(Canvas canvas, Tiling tiling, Sheet sheet, Point corner, int height)
    {
        var cell = Math.Min(height / tiling.Rows, 4 * Units.Millimetre);
        foreach (var other in tiling.Printed)
        {
            var left = corner.X - ((tiling.Columns - other.Column) * cell);
            var top = corner.Y + (other.Row * cell);
            var box = new Box(left, top, left + cell, top + cell);
            if (other == sheet)
                canvas.Area(box, Colour.Ink);
            canvas.Outline(box, TemplateInk.Fine, Colour.Ink);
        }
    }
}
