using System.Xml.Linq;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;
using Splitter.Planning;

namespace Splitter.Outputs.Sheets;

/// <summary>The finished piece as it lies on its cloth, with the fields on it.</summary>
internal sealed class WorkMap
{
    /// <summary>Where the artwork is drawn once; every other picture uses it again.</summary>
    internal const string ArtworkId = "artwork";

    /// <summary>Outlines are drawn without details smaller than this, µm: they would not show.</summary>
    private const double Detail = 60;

    /// <summary>Heights of a letter along the longer side of the map.</summary>
    private const int LettersToASide = 60;

    private readonly SheetContent sheet;
    private readonly Box stage;
    private readonly Box cloth;
    private readonly int letters;

    internal WorkMap(SheetContent sheet)
    {
        this.sheet = sheet;
        var drawing = sheet.Drawing;
        var fields = Box.Around(sheet.Plan.Hoopings.Select(h => h.Field.Bounds));
        var shown = new Box(0, 0, drawing.Width, drawing.Height).Joined(drawing.Bounds).Joined(fields);
        cloth = sheet.Recipe.Cloth.OnDrawing ?? shown;
        var all = shown.Joined(cloth);
        letters = Math.Max(all.Width, all.Height) / LettersToASide;
        stage = all.Grown(letters);
    }

    /// <summary>Beside another picture its letters would be too small to read.</summary>
    internal bool IsCrowded => FieldSigns.AreCrowded(sheet.Plan, letters);

    /// <summary>All fields and their letters, over the artwork, which is defined here for the whole page.</summary>
    internal XElement Whole(string label)
    {
        var canvas = new Canvas();
        foreach (var (i, hooping) in sheet.Plan.Hoopings.Index())
            Field(canvas, hooping, MarkInk.Field(i), letters / 4);
        var room = new LabelRoom(Laid(stage), letters);
        var signs = new FieldSigns(sheet.Drawing, sheet.Plan, room, letters);
        foreach (var (i, hooping) in sheet.Plan.Hoopings.Index())
        {
            var sign = new FieldSign(canvas, letters, hooping, sheet.Say.Say("map.top"), null);
            sign.Draw(Laid(signs.Place(i, sign, Shift)), MarkInk.Field(i));
        }
        return Picture(
            label,
            "whole",
            Artwork(),
            Cloth(),
            InlineSvg.Use(ArtworkId, InlineSvg.Moved(Shift)),
            InlineSvg.Items(canvas)
        );
    }

    /// <summary>The artwork, for pictures of the same page to use.</summary>
    internal XElement Artwork() =>
        new("defs", new XElement("g", new XAttribute("id", ArtworkId), sheet.Drawing.Shapes.Select(Shape)));

    /// <summary>One field lit, all else pale.</summary>
    internal XElement Part(int index, string label)
    {
        var (below, above) = (new Canvas(), new Canvas());
        foreach (var other in sheet.Plan.Hoopings.Where((_, i) => i != index))
            below.Outline(Laid(other.Field.Bounds), letters / 8, MarkInk.Frame);
        var hooping = sheet.Plan.Hoopings[index];
        Field(above, hooping, Colour.Ink, letters / 2);
        var sign = new FieldSign(above, letters * 3 / 2, hooping, sheet.Say.Say("map.top"), null);
        sign.Draw(Laid(hooping.Field.Centre), Colour.Ink);
        var clip = $"lit-{hooping.Letter}";
        return Picture(
            label,
            "map",
            new XElement("clipPath", new XAttribute("id", clip), Rectangle(Laid(hooping.Field.Bounds))),
            Cloth(),
            InlineSvg.Use(ArtworkId, InlineSvg.Moved(Shift), new XAttribute("opacity", ".25")),
            InlineSvg.Items(below),
            new XElement(
                "g",
                new XAttribute("clip-path", $"url(#{clip})"),
                Cloth(),
                InlineSvg.Use(ArtworkId, InlineSvg.Moved(Shift))
            ),
            InlineSvg.Items(above)
        );
    }

    /// <summary>Numbered places on the pale artwork.</summary>
    internal XElement Places(string label, IEnumerable<Box> places)
    {
        var canvas = new Canvas();
        var room = new LabelRoom(Laid(stage), letters);
        var boxes = places.Select(place => Laid(place).Grown(letters / 4)).ToList();
        foreach (var box in boxes)
        {
            canvas.Outline(box, letters / 2, Colour.White);
            canvas.Outline(box, letters / 4, MarkInk.TooFar);
            room.Take(box);
        }
        foreach (var (i, box) in boxes.Index())
        {
            var (number, height) = ($"{i + 1}", 2 * letters);
            var at = room.Beside(new(box.Right, box.Top), StrokeFont.WidthOf(number, height), height, (1, -1));
            canvas.Label(number, new(at.Left, at.Bottom), height, Colour.Ink);
        }
        return Picture(
            label,
            "map",
            Cloth(),
            InlineSvg.Use(ArtworkId, InlineSvg.Moved(Shift), new XAttribute("opacity", ".5")),
            InlineSvg.Items(canvas)
        );
    }

    /// <summary>Where the cloth is folded, measured from its own edges.</summary>
    internal XElement Folds(string label)
    {
        var (canvas, edge) = (new Canvas(), Laid(cloth));
        // Apart from each other, and from the folds.
        var beside = new Point(edge.Left + (edge.Width / 5), edge.Top + (edge.Height / 6));
        foreach (var fold in sheet.Plan.PlacementLines.Select(line => line.Fold))
        {
            var at = Laid(sheet.Plan.PlacementLines.First(line => line.Fold == fold).From);
            var upright = fold == Fold.Upright;
            var (from, to) = upright
                ? (edge with { Left = at.X, Right = at.X }, new[] { edge.Left, edge.Right })
                : (edge with { Top = at.Y, Bottom = at.Y }, new[] { edge.Top, edge.Bottom });
            Point[] ends = [new(from.Left, from.Top), new(from.Right, from.Bottom)];
            canvas.Line(letters / 2, Colour.White, 80, ends);
            canvas.Dashes(letters / 4, letters, MarkInk.Placement, ends);
            foreach (var side in to)
                Measure(
                    upright ? new(side, beside.Y) : new(beside.X, side),
                    upright ? at with { Y = beside.Y } : at with { X = beside.X }
                );
        }
        return Picture(
            label,
            "map",
            Cloth(),
            InlineSvg.Use(ArtworkId, InlineSvg.Moved(Shift), new XAttribute("opacity", ".3")),
            InlineSvg.Items(canvas)
        );

        void Measure(Point edgeAt, Point foldAt)
        {
            var text = sheet.Numbers.Length(edgeAt.DistanceTo(foldAt));
            var height = letters * 3 / 2;
            canvas.Line(letters / 6, Colour.Ink, 100, edgeAt, foldAt);
            var at = edgeAt.Towards(foldAt, 0.5);
            canvas.Label(text, new(at.X, at.Y + (height / 2)), height, Colour.Ink, Side.Middle);
        }
    }

    internal static XElement Rectangle(Box box, params object?[] attributes) =>
        new(
            "rect",
            new XAttribute("x", InlineSvg.Tenths(box.Left)),
            new XAttribute("y", InlineSvg.Tenths(box.Top)),
            new XAttribute("width", InlineSvg.Tenths(box.Width)),
            new XAttribute("height", InlineSvg.Tenths(box.Height)),
            attributes
        );

    private Point Shift => new(-stage.Left, -stage.Top);

    private Point Laid(Point p) => p + Shift;

    private Box Laid(Box b) => new(b.Left + Shift.X, b.Top + Shift.Y, b.Right + Shift.X, b.Bottom + Shift.Y);

    private XElement Picture(string label, string of, params object?[] layers) =>
        InlineSvg.Of(stage.Width, stage.Height, label, of, layers);

    private XElement Cloth() => Rectangle(Laid(cloth), new XAttribute("fill", sheet.Recipe.Cloth.Color));

    private XElement Shape(Shape shape) =>
        InlineSvg.Area(
            [.. Polygons.Simplify(shape.Footprint, Detail).Rings.Select(ring => ring.Points)],
            Colour.Of(sheet.Drawing.Threads[shape.Thread].Color)
        );

    private void Field(Canvas canvas, Hooping hooping, Colour colour, int width)
    {
        canvas.Outline(Laid(hooping.Field.Bounds), 2 * width, Colour.White, 60);
        canvas.Outline(Laid(hooping.Field.Bounds), width, colour);
    }
}
