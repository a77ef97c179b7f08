using System.Collections.Immutable;
using System.Xml.Linq;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;
using Splitter.Parts;
using Splitter.Planning;

namespace Splitter.Outputs.Sheets;

/// <summary>
/// A part as the machine holds its hoop: the artwork turned as the cloth lies, where the cloth ends, the machine's
/// side, the corners that it is set by with the distances between them, the crosses by their numbers, and the corners
/// it sews last.
/// </summary>
internal sealed class HoopView
{
    /// <summary>
    /// Room for the sign of the throat beside the hoop, and above or below it, in heights of a letter.
    /// </summary>
    private const int ThroatBeside = 9,
        ThroatAbove = 3;

    private readonly SheetContent sheet;
    private readonly Part part;
    private readonly Hooping hooping;
    private readonly Canvas canvas = new();
    private readonly HoopFrame frame;
    private readonly LabelRoom room;
    private readonly int letters;
    private readonly Box field;

    /// <summary>What of the hoop the cloth fills.</summary>
    private readonly Box cloth;

    internal HoopView(SheetContent sheet, Part part)
    {
        (this.sheet, this.part, hooping) = (sheet, part, part.Hooping);
        frame = new(hooping.Field, ThroatBeside, ThroatAbove);
        (letters, field) = (frame.Letters, frame.Inside);
        // No word stands on the frame or beside it, where it would seem to be the hoop's.
        room = new(field.Grown(-letters / 2), letters);
        cloth = sheet.Recipe.Cloth.OnDrawing is { } box ? frame.Lay(box).Common(field) : field;
    }

    /// <param name="artwork">Of a page on which no other picture has it.</param>
    internal XElement Draw(string label, XElement? artwork = null)
    {
        Paint();
        var clip = $"hoop-{hooping.Letter}";
        return InlineSvg.Of(
            frame.Page.Width,
            frame.Page.Height,
            label,
            "hoop",
            artwork,
            new XElement("clipPath", new XAttribute("id", clip), WorkMap.Rectangle(cloth)),
            WorkMap.Rectangle(field, new XAttribute("fill", "#fff")),
            InlineSvg.Items(Bare()),
            new XElement(
                "g",
                new XAttribute("clip-path", $"url(#{clip})"),
                WorkMap.Rectangle(cloth, new XAttribute("fill", sheet.Recipe.Cloth.Color)),
                InlineSvg.Use(WorkMap.ArtworkId, frame.Laying(), new XAttribute("opacity", ".4"))
            ),
            InlineSvg.Items(canvas)
        );
    }

    /// <summary>All that lies over cloth and artwork.</summary>
    internal ImmutableArray<Item> Paint()
    {
        canvas.Outline(field, letters / 4, Colour.Ink);
        Edge();
        Throat();
        Folds();
        Dense();
        new HoopMarks(sheet, hooping, part.TakenOut, frame, room).Draw(canvas);
        ClothTop();
        return canvas.ToItems();
    }

    /// <summary>Stabilizer without cloth on it shows through wherever the cloth does not reach.</summary>
    private Canvas Bare()
    {
        var below = new Canvas();
        if (cloth != field)
            below.Lines(letters / 8, MarkInk.Frame, 100, Hatching.Of(field, letters));
        return below;
    }

    private void Edge()
    {
        if (cloth == field)
            return;
        foreach (
            var (from, to) in new[]
            {
                (new Point(cloth.Left, cloth.Top), new Point(cloth.Right, cloth.Top)),
                (new(cloth.Left, cloth.Bottom), new(cloth.Right, cloth.Bottom)),
                (new(cloth.Left, cloth.Top), new(cloth.Left, cloth.Bottom)),
                (new(cloth.Right, cloth.Top), new(cloth.Right, cloth.Bottom)),
            }
        )
        {
            // Where it lies on the hoop's own side, that is drawn.
            if (field.Grown(-1).Contains(from.Towards(to, 0.5)))
                canvas.Line(letters / 3, Colour.Ink, 100, from, to);
        }
    }

    /// <summary>The column of the machine's arm, beside the hoop.</summary>
    private void Throat()
    {
        Word(sheet.Say.Say("hoop.top"), new(field.Left, field.Top - letters));
        if (hooping.Field.Hoop.Throat is not { } throat)
            return;
        var side = HoopFrame.Towards(throat.Side);
        var middle = new Point(
            field.Centre.X + (side.X * ((field.Width / 2) + letters)),
            field.Centre.Y + (side.Y * ((field.Height / 2) + letters))
        );
        var (wide, high) = (Math.Abs(side.Y) * field.Width / 7, Math.Abs(side.X) * field.Height / 3);
        Point[] bar = [new(middle.X - wide, middle.Y - high), new(middle.X + wide, middle.Y + high)];
        canvas.Line(letters, Colour.Ink, 100, bar);
        room.Take(Box.Around(bar).Grown(letters / 2));
        var name = sheet.Say.Say("hoop.throat");
        var half = StrokeFont.WidthOf(name, letters) / 2;
        Word(
            name,
            new(
                middle.X + (side.X * (half + (letters * 3 / 2))) - half,
                middle.Y + (side.Y * 2 * letters) + (letters / 2)
            )
        );
    }

    /// <summary>Beside the hoop, its baseline beginning at a point; no name of a mark comes there.</summary>
    private void Word(string text, Point at)
    {
        canvas.Text(text, at, letters, Colour.Ink);
        room.Take(Box.Around([at, new(at.X + StrokeFont.WidthOf(text, letters), at.Y - letters)]));
    }

    /// <summary>The lines that the first part sews for the folds.</summary>
    private void Folds()
    {
        if (hooping != sheet.Plan.Hoopings[0])
            return;
        foreach (var line in sheet.Plan.PlacementLines)
        {
            canvas.Line(letters / 2, Colour.White, 80, frame.Lay(line.From), frame.Lay(line.To));
            canvas.Dashes(letters / 4, letters, MarkInk.Placement, frame.Lay(line.From), frame.Lay(line.To));
            room.Cross([frame.Lay(line.From), frame.Lay(line.To)]);
        }
    }

    /// <summary>Of all parts, where this one lays thread, too; a wide spot may be worst in another hoop.</summary>
    private void Dense()
    {
        var index = sheet.Plan.Hoopings.IndexOf(hooping);
        foreach (var spot in sheet.Ground.Dense.Where(spot => spot.Hoopings.Contains(index)))
            if (frame.Lay(spot.Worst.Middle) is var middle && field.Contains(middle))
                DenseSign.Draw(canvas, middle, letters);
    }

    /// <summary>The way to the cloth's top, near that side of the hoop.</summary>
    private void ClothTop()
    {
        var up = TurnText.DrawingUp(hooping.Field.Turn);
        var near = field.Grown(-3 * letters);
        var (from, to) = (
            new Point(up.X > 0 ? near.Right : near.Left, up.Y > 0 ? near.Bottom : near.Top),
            new Point(up.X < 0 ? near.Left : near.Right, up.Y < 0 ? near.Top : near.Bottom)
        );
        var middle = room.Along(from, to, 4 * letters, 4 * letters).Centre;
        Arrow.Draw(canvas, middle, up, 4 * letters, letters, Colour.White);
        Arrow.Draw(canvas, middle, up, 4 * letters, letters / 3, Colour.Ink);
    }
}
