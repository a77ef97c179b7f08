using Splitter.Geometry;
using Splitter.Outputs.Pdf;
using Splitter.Outputs.Pictures;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Outputs.Templates;

/// <summary>A part's field as the machine holds it, to lay into the hoop; its centre is the board's origin.</summary>
internal sealed class FieldBoard
{
    /// <summary>Room beyond the field's edge for the line itself.</summary>
    private const int Rim = Units.Millimetre;

    private const int Tick = 5 * Units.Millimetre;
    private const int ArrowLength = 8 * Units.Millimetre;

    /// <summary>From the middle of an edge to the arrow beside it.</summary>
    private const int Beside = 16 * Units.Millimetre;

    private readonly Canvas canvas = new();
    private readonly Plan plan;
    private readonly Hooping hooping;
    private readonly TemplateTexts texts;
    private readonly Box box;
    private readonly MarkSigns signs;

    private FieldBoard(Plan plan, Hooping hooping, TemplateTexts texts)
    {
        (this.plan, this.hooping, this.texts) = (plan, hooping, texts);
        var (wide, high) = (plan.Hoop.Width / 2, plan.Hoop.Height / 2);
        box = new(-wide, -high, wide, high);
        signs = new(canvas, box);
    }

    internal static Board Of(Cloth cloth, Plan plan, Hooping hooping, PdfLayer artwork, TemplateTexts texts) =>
        new FieldBoard(plan, hooping, texts).Draw(cloth, artwork);

    private Board Draw(Cloth cloth, PdfLayer artwork)
    {
        Frame();
        foreach (var line in plan.PlacementLines.Where(_ => hooping.Takes.IsEmpty))
            Placement(line);
        if (cloth.OnDrawing is { } edge)
            ClothEdge.Draw(canvas, signs, Lay(edge), box, texts.ClothEdge);
        foreach (var (i, cross) in hooping.Alignments.Index())
            signs.Alignment($"{i + 1}", Lay(cross.At));
        foreach (var corner in hooping.Takes)
            Corner(plan.Corners[corner], dashed: false);
        foreach (var corner in hooping.Gives)
            Corner(plan.Corners[corner], dashed: true);
        signs.Centre(hooping.Letter, texts.HoopTop, default, new(0, -1), Colour.Ink);
        DrawingTop();
        signs.DrawNames();
        var ground = box.Grown(Rim);
        return new(
            texts.Part(hooping.Letter),
            ground,
            [
                new(artwork, hooping.Field.Turn, Lay(default(Point)), box),
                new(new(ground, canvas.ToItems()), Turn.None, default, ground),
            ],
            _ => true,
            signs.Hides
        );
    }

    private Point Lay(Point p)
    {
        var at = hooping.Field.ToField(p);
        return new(at.U, -at.V);
    }

    private Box Lay(Box b) => Box.Around([Lay(new Point(b.Left, b.Top)), Lay(new Point(b.Right, b.Bottom))]);

    private void Frame()
    {
        canvas.Outline(box, TemplateInk.Strong, Colour.Ink);
        canvas.DashedOutline(
            box.Grown(-hooping.Field.Clearance),
            TemplateInk.Fine,
            TemplateInk.Dash,
            TemplateInk.Artwork
        );
        // Through the whole field, for the marks at the middle of a hoop's sides.
        canvas.Lines(
            TemplateInk.Fine,
            TemplateInk.Artwork,
            100,
            [
                [new(box.Left, 0), new(box.Right, 0)],
                [new(0, box.Top), new(0, box.Bottom)],
            ]
        );
        canvas.Lines(
            2 * TemplateInk.Strong,
            Colour.Ink,
            100,
            [
                [new(box.Left, 0), new(box.Left + Tick, 0)],
                [new(box.Right, 0), new(box.Right - Tick, 0)],
                [new(0, box.Top), new(0, box.Top + Tick)],
                [new(0, box.Bottom), new(0, box.Bottom - Tick)],
            ]
        );
        signs.Line(new(box.Left, 0), new(box.Right, 0));
        signs.Line(new(0, box.Top), new(0, box.Bottom));
    }

    private void Placement(PlacementLine line)
    {
        var (from, to) = (Lay(line.From), Lay(line.To));
        canvas.Line(TemplateInk.Strong, MarkInk.Placement, 100, from, to);
        signs.Line(from, to);
        signs.Name(texts.FoldOf(line.Fold), from, TemplateInk.SmallLetters, MarkInk.Placement, default);
    }

    private void Corner(Corner corner, bool dashed) =>
        signs.Corner(corner.Id, Lay(corner.At), Lay(corner.ArmX), Lay(corner.ArmY), dashed);

    /// <summary>Beside the middle of the edge that is up on the drawing.</summary>
    private void DrawingTop()
    {
        var up = TurnText.DrawingUp(hooping.Field.Turn);
        var inside = Tick + (ArrowLength / 2);
        var at = new Point(
            (up.X * ((box.Width / 2) - inside)) + (Math.Abs(up.Y) * Beside),
            (up.Y * ((box.Height / 2) - inside)) + (Math.Abs(up.X) * Beside)
        );
        Arrow.Draw(canvas, at, up, ArrowLength, TemplateInk.Strong, Colour.Ink);
        signs.Name(texts.DrawingTop, at, TemplateInk.SmallLetters, Colour.Ink, (-up.X, -up.Y));
    }
}
