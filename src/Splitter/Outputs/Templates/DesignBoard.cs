using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Outputs.Pdf;
using Splitter.Outputs.Pictures;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Outputs.Templates;

/// <summary>The whole design as it lies on the cloth, with every field's centre, every corner and the folds.</summary>
internal static class DesignBoard
{
    /// <summary>Room around what is shown, so that names at the edge are whole.</summary>
    private const int Rim = 5 * Units.Millimetre;

    /// <summary>Length of the strong angles at a field's corners.</summary>
    private const int FieldAngle = 10 * Units.Millimetre;

    internal static Board Of(Cloth cloth, Drawing drawing, Plan plan, PdfLayer artwork, TemplateTexts texts)
    {
        var work = Box.Around([
            artwork.Bounds,
            Box.Around(plan.Hoopings.Select(h => h.Field.Centre)),
            Box.Around(plan.Corners.SelectMany(c => new[] { c.At, c.ArmX, c.ArmY })),
            Box.Around(plan.PlacementLines.SelectMany(l => new[] { l.From, l.To })),
        ]);
        var ground = work.Grown(Rim);
        var canvas = new Canvas();
        var signs = new MarkSigns(canvas, ground);
        Folds(canvas, signs, plan, ground, texts);
        var fields = Box.Around(plan.Hoopings.Select(h => h.Field.Bounds));
        var all = ground.Joined(fields).Joined(cloth.OnDrawing ?? fields).Grown(Rim);
        if (cloth.OnDrawing is { } edge)
            ClothEdge.Draw(canvas, signs, edge, all, texts.ClothEdge);
        foreach (var (hooping, i) in plan.Hoopings.Select((h, i) => (h, i)))
            Field(canvas, signs, hooping, texts.Top, MarkInk.Field(i));
        foreach (var corner in plan.Corners)
            signs.Corner(corner.Id, corner.At, corner.ArmX, corner.ArmY, dashed: false);
        signs.DrawNames();
        return new(
            texts.Design,
            ground,
            [
                new(artwork, Turn.None, default, artwork.Bounds),
                new(new(all, canvas.ToItems()), Turn.None, default, all),
            ],
            own => HasWork(drawing, plan, own),
            signs.Hides
        );
    }

    /// <summary>Where the cloth is folded, and strong where the first part sews.</summary>
    private static void Folds(Canvas canvas, MarkSigns signs, Plan plan, Box ground, TemplateTexts texts)
    {
        foreach (var line in plan.PlacementLines)
        {
            var (from, to) =
                line.Fold == Fold.Upright
                    ? (line.From with { Y = ground.Top }, line.To with { Y = ground.Bottom })
                    : (line.From with { X = ground.Left }, line.To with { X = ground.Right });
            canvas.Dashes(TemplateInk.Fine, 2 * TemplateInk.Dash, MarkInk.Placement, from, to);
            canvas.Line(2 * TemplateInk.Strong, MarkInk.Placement, 100, line.From, line.To);
            signs.Line(from, to);
            signs.Name(texts.FoldOf(line.Fold), line.From, TemplateInk.SmallLetters, MarkInk.Placement, default);
        }
    }

    private static void Field(Canvas canvas, MarkSigns signs, Hooping hooping, string top, Colour colour)
    {
        var box = hooping.Field.Bounds;
        canvas.Outline(box, TemplateInk.Fine, colour);
        foreach (var (x, y) in new[] { (1, 1), (-1, 1), (-1, -1), (1, -1) })
        {
            var corner = new Point(x > 0 ? box.Left : box.Right, y > 0 ? box.Top : box.Bottom);
            canvas.Line(
                2 * TemplateInk.Strong,
                colour,
                100,
                corner with
                {
                    X = corner.X + (x * FieldAngle),
                },
                corner,
                corner with
                {
                    Y = corner.Y + (y * FieldAngle),
                }
            );
            signs.Name(hooping.Letter, corner, TemplateInk.Letters, colour, (x, y));
        }
        signs.Edge(box);
        signs.Centre(hooping.Letter, top, hooping.Field.Centre, TurnText.HoopUp(hooping.Field.Turn), colour);
    }

    /// <summary>
    /// Artwork, a corner, a centre or a line to fold along; a piece of a field's outline alone is not worth paper.
    /// </summary>
    private static bool HasWork(Drawing drawing, Plan plan, Box own)
    {
        var ground = Region.Of(own);
        return plan.Hoopings.Any(h => own.Contains(h.Field.Centre))
            || plan.Corners.Any(c => own.Meets(Box.Around([c.At, c.ArmX, c.ArmY])))
            || plan.PlacementLines.Any(l => own.Meets(Box.Around([l.From, l.To])))
            || drawing.Shapes.Any(s =>
                s.Footprint.Bounds.Meets(own) && !Polygons.Intersect(s.Footprint, ground).IsEmpty
            );
    }
}
