using Splitter.Geometry;
using Splitter.Outputs.Pdf;
using Splitter.Outputs.Pictures;

namespace Splitter.Outputs.Templates;

/// <summary>
/// One sheet as it is printed: a window on its board, what joins it to its neighbours, and the control rules.
/// </summary>
internal sealed class SheetPage
{
    private const int HeadLetters = 3400;
    private const int MarkArm = 3500;
    private const int MarkRing = 2200;

    /// <summary>From a mark to its name.</summary>
    private const int MarkGap = 4500;

    private readonly Canvas canvas = new();
    private readonly Tiling tiling;
    private readonly Sheet sheet;
    private readonly TemplateTexts texts;
    private readonly Box window;
    private readonly Point shift;

    private SheetPage(Tiling tiling, Sheet sheet, TemplateTexts texts)
    {
        (this.tiling, this.sheet, this.texts) = (tiling, sheet, texts);
        window = tiling.Form.Window;
        shift = new(window.Left - sheet.Shown.Left, window.Top - sheet.Shown.Top);
    }

    internal static PdfPage Of(Tiling tiling, Sheet sheet, TemplateTexts texts, int sheets) =>
        new SheetPage(tiling, sheet, texts).Draw(sheets);

    private PdfPage Draw(int sheets)
    {
        canvas.Outline(window, TemplateInk.Fine, TemplateInk.Artwork);
        foreach (var side in new Point[] { new(-1, 0), new(0, -1), new(1, 0), new(0, 1) })
            if (tiling.Neighbour(sheet, side) is not null)
                Edge(side);
        foreach (var mark in tiling.Marks.Where(m => m.First == sheet.Number || m.Second == sheet.Number))
            Mark(mark);
        Head(sheets);
        Foot(canvas, tiling.Form, texts);
        var form = tiling.Form;
        return new(canvas.ToPicture(form.Width, form.Height, texts.Subject), [.. tiling.Board.Layers.Select(Window)]);
    }

    /// <summary>The control rules, and what to do with them.</summary>
    internal static void Foot(Canvas canvas, SheetForm form, TemplateTexts texts)
    {
        var rule = new Point(SheetForm.Margin, form.Window.Bottom + (SheetForm.Foot / 2));
        ControlRule.Level(canvas, rule);
        var right = form.Width - SheetForm.Margin;
        canvas.Text(texts.FootPrint, new(right, rule.Y - 700), TemplateInk.SmallLetters, Colour.Ink, Side.Right);
        canvas.Text(
            texts.FootMeasure,
            new(right, rule.Y + 700 + TemplateInk.SmallLetters),
            TemplateInk.SmallLetters,
            Colour.Ink,
            Side.Right
        );
    }

    private PdfWindow Window(BoardLayer layer) =>
        new(layer.Layer, layer.Turn, layer.Shift + shift, Laid(layer.Shown).Common(window));

    private Point Laid(Point p) => p + shift;

    private Box Laid(Box b) => Box.Around([Laid(new Point(b.Left, b.Top)), Laid(new Point(b.Right, b.Bottom))]);

    /// <summary>
    /// Dashed where this sheet is cut and lies over its neighbour, pale where a neighbour lies over it.
    /// </summary>
    private void Edge(Point side)
    {
        var own = Laid(sheet.Own);
        var (from, to) = side switch
        {
            (-1, 0) => (new Point(own.Left, window.Top), new Point(own.Left, window.Bottom)),
            (1, 0) => (new(own.Right, window.Top), new(own.Right, window.Bottom)),
            (0, -1) => (new(window.Left, own.Top), new(window.Right, own.Top)),
            _ => (new(window.Left, own.Bottom), new(window.Right, own.Bottom)),
        };
        if (side.X + side.Y < 0)
            canvas.Dashes(TemplateInk.Fine, TemplateInk.Dash, Colour.Ink, from, to);
        else
            canvas.Line(TemplateInk.Fine, TemplateInk.Artwork, 100, from, to);
    }

    private void Mark(JoiningMark mark)
    {
        var at = Laid(mark.At);
        canvas.Lines(
            TemplateInk.Fine,
            Colour.Ink,
            100,
            [
                [at with { X = at.X - MarkArm }, at with { X = at.X + MarkArm }],
                [at with { Y = at.Y - MarkArm }, at with { Y = at.Y + MarkArm }],
            ]
        );
        canvas.Ring(at, MarkRing, TemplateInk.Fine, Colour.Ink);
        // The name stands on the sheet's own ground, so that it stays to be read when sheets lie over each other.
        var isFirst = mark.First == sheet.Number;
        var inwards = isFirst ? -1 : 1;
        var height = TemplateInk.Letters;
        var text = texts.JoinsTo(mark.Name, isFirst ? mark.Second : mark.First);
        if (mark.Side.X != 0)
            canvas.Label(
                text,
                new(at.X + (inwards * MarkGap), at.Y + (height / 2)),
                height,
                Colour.Ink,
                isFirst ? Side.Right : Side.Left
            );
        else
            canvas.Label(
                text,
                new(at.X, at.Y + (inwards * MarkGap) + (isFirst ? 0 : height)),
                height,
                Colour.Ink,
                Side.Middle
            );
    }

    private void Head(int sheets)
    {
        var (left, right, baseline) = (SheetForm.Margin, window.Right, SheetForm.Margin + HeadLetters);
        canvas.Text(texts.SheetOf(sheet.Number, sheets), new(left, baseline), HeadLetters, Colour.Ink);
        var beside = left + StrokeFont.WidthOf(texts.SheetOf(sheets, sheets), HeadLetters) + (2 * HeadLetters);
        canvas.Text(tiling.Board.Title, new(beside, baseline), HeadLetters, Colour.Ink);
        canvas.Text(
            texts.Subject,
            new(left, SheetForm.Margin + SheetForm.Head - 900),
            TemplateInk.SmallLetters,
            Colour.Ink
        );
        if (tiling.Printed.Count() > 1)
            SheetMap.Sign(canvas, tiling, sheet, new(right, SheetForm.Margin), SheetForm.Head - Units.Millimetre);
    }
}
