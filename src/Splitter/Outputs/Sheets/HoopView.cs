using System.Xml.Linq;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;
using Splitter.Planning;

namespace Splitter.Outputs.Sheets;

/// <summary>
/// A part as the machine holds its hoop: the artwork turned as the cloth lies, the corners that it is set by with the
/// distances between them, the crosses by their numbers, and the corners that it sews last.
/// </summary>
internal sealed class HoopView
{
    /// <summary>Heights of a letter along the longer side of the field.</summary>
    private const int LettersToASide = 48;

    /// <summary>
    /// Between more corners than this, lines would hide what they measure: the list beside has them all.
    /// </summary>
    private const int MostMeasured = 3;

    /// <summary>
    /// Where along the lines their lengths stand: apart from each other where the lines nearly are one.
    /// </summary>
    private static readonly double[] LabelsAt = [0.5, 0.35, 0.65];

    private readonly SheetContent sheet;
    private readonly Hooping hooping;
    private readonly Canvas canvas = new();
    private readonly int letters;
    private readonly Box field;
    private readonly Point centre;

    internal HoopView(SheetContent sheet, Hooping hooping)
    {
        (this.sheet, this.hooping) = (sheet, hooping);
        var hoop = hooping.Field.Hoop;
        letters = Math.Max(hoop.Width, hoop.Height) / LettersToASide;
        var (margin, top) = (2 * letters, 3 * letters);
        field = new(margin, top, margin + hoop.Width, top + hoop.Height);
        centre = field.Centre;
    }

    internal XElement Draw(string label)
    {
        canvas.Outline(field, letters / 4, Colour.Ink);
        Sides();
        Folds();
        Distances();
        foreach (var corner in hooping.Gives.Select(i => sheet.Plan.Corners[i]))
            Later(corner);
        foreach (var (i, cross) in hooping.Alignments.Index())
            Cross(cross, i + 1);
        foreach (var corner in hooping.Takes.Select(i => sheet.Plan.Corners[i]))
            Corner(corner);
        var clip = $"hoop-{hooping.Letter}";
        return InlineSvg.Of(
            field.Right + (2 * letters),
            field.Bottom + (3 * letters),
            label,
            "hoop",
            new XElement("clipPath", new XAttribute("id", clip), WorkMap.Rectangle(field)),
            new XElement(
                "g",
                new XAttribute("clip-path", $"url(#{clip})"),
                WorkMap.Rectangle(field, new XAttribute("fill", sheet.Recipe.Cloth.Color)),
                InlineSvg.Use(WorkMap.ArtworkId, Laying(), new XAttribute("opacity", ".4"))
            ),
            InlineSvg.Items(canvas)
        );
    }

    /// <summary>From the drawing to the hoop, as SVG says it; as <see cref="Lay"/> does.</summary>
    private string Laying()
    {
        var from = hooping.Field.Centre;
        return $"{InlineSvg.Moved(centre)}rotate({-(int)hooping.Field.Turn}){InlineSvg.Moved(new(-from.X, -from.Y))}";
    }

    private Point Lay(Point p)
    {
        var at = hooping.Field.ToField(p);
        return new(centre.X + at.U, centre.Y - at.V);
    }

    /// <summary>The hoop's own top, and where the top of the cloth goes.</summary>
    private void Sides()
    {
        canvas.Text(sheet.Say.Say("hoop.top"), new(field.Left, field.Top - letters), letters, Colour.Ink);
        var up = TurnText.DrawingUp(hooping.Field.Turn);
        var middle = new Point(
            centre.X + (up.X * ((field.Width / 2) - (3 * letters))),
            centre.Y + (up.Y * ((field.Height / 2) - (3 * letters)))
        );
        Arrow.Draw(canvas, middle, up, 4 * letters, letters, Colour.White);
        Arrow.Draw(canvas, middle, up, 4 * letters, letters / 3, Colour.Ink);
    }

    /// <summary>The lines that the first part sews for the folds.</summary>
    private void Folds()
    {
        if (hooping != sheet.Plan.Hoopings[0])
            return;
        foreach (var line in sheet.Plan.PlacementLines)
        {
            canvas.Line(letters / 2, Colour.White, 80, Lay(line.From), Lay(line.To));
            canvas.Dashes(letters / 4, letters, MarkInk.Placement, Lay(line.From), Lay(line.To));
        }
    }

    private void Distances()
    {
        if (hooping.Takes.Length > MostMeasured)
            return;
        foreach (var (i, (one, other, length)) in CornerPairs.Of(sheet.Plan, hooping).Index())
        {
            var (from, to) = (Lay(one.At), Lay(other.At));
            canvas.Line(letters / 2, Colour.White, 80, from, to);
            canvas.Dashes(letters / 8, letters / 2, MarkInk.Corner, from, to);
            var (middle, text) = (from.Towards(to, LabelsAt[i]), sheet.Numbers.Length(length));
            // Between corners that lie near each other it would hide their names.
            if (length < 2 * StrokeFont.WidthOf(text, letters))
                continue;
            canvas.Label(text, middle with { Y = middle.Y + (letters / 2) }, letters, Colour.Ink, Side.Middle);
        }
    }

    private void Corner(Corner corner)
    {
        var (at, x, y) = (Lay(corner.At), Lay(corner.ArmX), Lay(corner.ArmY));
        canvas.Line(letters * 9 / 10, Colour.White, 100, x, at, y);
        canvas.Line(letters / 2, MarkInk.Corner, 100, x, at, y);
        canvas.Disc(at, letters * 2 / 5, Colour.Ink);
        Name(corner, at, x, y, letters * 8 / 5, MarkInk.Corner);
    }

    private void Later(Corner corner)
    {
        var (at, x, y) = (Lay(corner.At), Lay(corner.ArmX), Lay(corner.ArmY));
        canvas.Line(letters * 6 / 10, Colour.White, 100, x, at, y);
        canvas.Line(letters / 5, MarkInk.Corner, 100, x, at, y);
        Name(corner, at, x, y, letters, MarkInk.Corner);
    }

    /// <summary>Between its arms.</summary>
    private void Name(Corner corner, Point at, Point x, Point y, int height, Colour colour)
    {
        var (right, down) = (Math.Sign(x.X + y.X - (2 * at.X)), Math.Sign(x.Y + y.Y - (2 * at.Y)));
        canvas.Label(
            corner.Id,
            new(at.X + (right * letters), at.Y + (down * letters) + (down > 0 ? height : 0)),
            height,
            colour,
            right > 0 ? Side.Left : Side.Right
        );
    }

    private void Cross(AlignmentStitch cross, int number)
    {
        var (at, arm) = (Lay(cross.At), AlignmentStitch.Arm);
        foreach (var (width, colour) in new[] { (letters * 6 / 10, Colour.White), (letters / 4, MarkInk.Alignment) })
            canvas.Lines(
                width,
                colour,
                100,
                [
                    [at with { X = at.X - arm }, at with { X = at.X + arm }],
                    [at with { Y = at.Y - arm }, at with { Y = at.Y + arm }],
                ]
            );
        // A cross on a corner has the corner's name between its arms: its own stands on the other side.
        var onCorner = sheet.Plan.Corners.FirstOrDefault(c => c.Id == cross.On);
        var (right, down) = onCorner is null ? (1, -1) : Away(onCorner);
        canvas.Label(
            $"{number}",
            new(at.X + (right * letters), at.Y + (down * letters) + (down > 0 ? letters : 0)),
            letters * 6 / 5,
            MarkInk.Alignment,
            right > 0 ? Side.Left : Side.Right
        );
    }

    private (int Right, int Down) Away(Corner corner)
    {
        var (at, x, y) = (Lay(corner.At), Lay(corner.ArmX), Lay(corner.ArmY));
        return (-Math.Sign(x.X + y.X - (2 * at.X)), -Math.Sign(x.Y + y.Y - (2 * at.Y)));
    }
}
