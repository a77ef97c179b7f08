using System.Collections.Immutable;
using System.Xml.Linq;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;
using Splitter.Planning;

namespace Splitter.Outputs.Sheets;

/// <summary>
/// A part as the machine holds its hoop: the artwork turned as the cloth lies, where the cloth ends, the machine's side, the
/// corners that it is set by with the distances between them, the crosses by their numbers, and the corners it sews last.
/// </summary>
internal sealed class HoopView
{
    /// <summary>
    /// Between more corners than this, lines would hide what they measure: the list beside has them all.
    /// </summary>
    private const int MostMeasured = 3;

    /// <summary>Room for the sign of the throat beside the hoop, and above or below it, in heights of a letter.</summary>
    private const int ThroatBeside = 9,
        ThroatAbove = 3;

    private readonly SheetContent sheet;
    private readonly Hooping hooping;
    private readonly Canvas canvas = new();
    private readonly HoopFrame frame;
    private readonly LabelRoom room;
    private readonly int letters;
    private readonly Box field;

    /// <summary>What of the hoop the cloth fills.</summary>
    private readonly Box cloth;

    internal HoopView(SheetContent sheet, Hooping hooping)
    {
        (this.sheet, this.hooping) = (sheet, hooping);
        frame = new(hooping.Field, ThroatBeside, ThroatAbove);
        (letters, field) = (frame.Letters, frame.Inside);
        room = new(frame.Page, letters);
        cloth = sheet.Recipe.Cloth.OnDrawing is { } box ? frame.Lay(box).Common(field) : field;
    }

    internal XElement Draw(string label)
    {
        canvas.Outline(field, letters / 4, Colour.Ink);
        Edge();
        Throat();
        Folds();
        Marks();
        CornersToSet();
        ClothTop();
        Corners(hooping.Gives, letters / 5, letters * 10 / 9);
        Crosses();
        var clip = $"hoop-{hooping.Letter}";
        return InlineSvg.Of(
            frame.Page.Width,
            frame.Page.Height,
            label,
            "hoop",
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
        canvas.Text(sheet.Say.Say("hoop.top"), new(field.Left, field.Top - letters), letters, Colour.Ink);
        if (hooping.Field.Hoop.Throat is not { } throat)
            return;
        var side = HoopFrame.Towards(throat.Side);
        var middle = new Point(
            field.Centre.X + (side.X * ((field.Width / 2) + letters)),
            field.Centre.Y + (side.Y * ((field.Height / 2) + letters))
        );
        var (wide, high) = (Math.Abs(side.Y) * field.Width / 7, Math.Abs(side.X) * field.Height / 3);
        canvas.Line(
            letters,
            Colour.Ink,
            100,
            new(middle.X - wide, middle.Y - high),
            new(middle.X + wide, middle.Y + high)
        );
        var name = sheet.Say.Say("hoop.throat");
        var at = new Point(
            middle.X + (side.X * ((StrokeFont.WidthOf(name, letters) / 2) + (letters * 3 / 2))),
            middle.Y + (side.Y * 2 * letters) + (letters / 2)
        );
        canvas.Text(name, at, letters, Colour.Ink, Side.Middle);
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
        }
    }

    /// <summary>What no word may hide, before any finds its place.</summary>
    private void Marks()
    {
        foreach (var corner in hooping.Takes.Concat(hooping.Gives).Select(i => sheet.Plan.Corners[i]))
        {
            var (_, at, x, y) = Laid(corner);
            room.Take(Box.Around([at, x]).Grown(letters / 3));
            room.Take(Box.Around([at, y]).Grown(letters / 3));
        }
        foreach (var cross in hooping.Alignments)
            room.Take(Box.Around([frame.Lay(cross.At)]).Grown(AlignmentStitch.Arm));
    }

    /// <summary>Distances run below the corners and stand above them.</summary>
    private void CornersToSet()
    {
        var pairs = hooping.Takes.Length > MostMeasured ? [] : CornerPairs.Of(sheet.Plan, hooping);
        foreach (var (one, other, _) in pairs)
        {
            canvas.Line(letters / 2, Colour.White, 80, frame.Lay(one.At), frame.Lay(other.At));
            canvas.Dashes(letters / 8, letters / 2, MarkInk.Corner, frame.Lay(one.At), frame.Lay(other.At));
        }
        Corners(hooping.Takes, letters / 2, letters * 16 / 9);
        foreach (var corner in hooping.Takes)
            canvas.Disc(frame.Lay(sheet.Plan.Corners[corner].At), letters * 2 / 5, Colour.Ink);
        foreach (var (one, other, length) in pairs)
        {
            var text = sheet.Numbers.Length(length);
            var width = StrokeFont.WidthOf(text, letters);
            // Between corners that lie near each other it would hide their names: the table beside has it.
            if (length < 2 * width)
                continue;
            var box = room.Along(frame.Lay(one.At), frame.Lay(other.At), width, letters);
            canvas.Label(text, new(box.Left, box.Bottom), letters, Colour.Ink);
        }
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

    private void Corners(ImmutableArray<int> indexes, int pen, int height)
    {
        var corners = indexes.Select(i => Laid(sheet.Plan.Corners[i])).ToList();
        var names = corners.ConvertAll(c => MarkName.Of(c.Id, c.At, c.X, c.Y, room, height));
        foreach (var name in names)
            name.DrawLine(canvas);
        foreach (var (_, at, x, y) in corners)
        {
            canvas.Line(pen + (letters * 4 / 10), Colour.White, 100, x, at, y);
            canvas.Line(pen, MarkInk.Corner, 100, x, at, y);
        }
        foreach (var name in names)
            name.Draw(canvas);
    }

    private void Crosses()
    {
        var crosses = hooping.Alignments.Select(cross => frame.Lay(cross.At)).ToList();
        var names = crosses.Select((at, i) => MarkName.OfCross($"{i + 1}", at, room, letters * 4 / 3)).ToList();
        foreach (var name in names)
            name.DrawLine(canvas);
        foreach (var at in crosses)
            AlignmentSign.Draw(canvas, at, letters * 5 / 3);
        foreach (var name in names)
            name.Draw(canvas);
    }

    private (string Id, Point At, Point X, Point Y) Laid(Corner corner) =>
        (corner.Id, frame.Lay(corner.At), frame.Lay(corner.ArmX), frame.Lay(corner.ArmY));
}
