using System.Collections.Immutable;
using System.Globalization;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// The whole work in true scale with every field on it, to be pinned to the wall: which part is where, which way its hoop
/// lies, where parts meet and which corners they are set by.
/// </summary>
internal sealed class OverviewPicture
{
    /// <summary>Outlines are drawn without details smaller than this, µm: they would not show.</summary>
    private const double Detail = 50;

    private readonly Canvas canvas = new();
    private readonly Recipe recipe;
    private readonly Drawing drawing;
    private readonly Plan plan;
    private readonly ImmutableArray<ListedPart> parts;

    /// <summary>What is shown of the drawing's plane.</summary>
    private readonly Box stage;

    private readonly Box cloth;

    /// <summary>Height of a capital of the table; everything else is a multiple of it, so that a small work gets a small page.</summary>
    private readonly int letters;

    private readonly Point shift;

    private OverviewPicture(Recipe recipe, Drawing drawing, Plan plan, ImmutableArray<ListedPart> parts)
    {
        (this.recipe, this.drawing, this.plan, this.parts) = (recipe, drawing, plan, parts);
        var fields = Box.Around(plan.Hoopings.Select(h => h.Field.Bounds));
        var shown = Box.Around([new Box(0, 0, drawing.Width, drawing.Height), drawing.Bounds, fields]);
        var at = recipe.Cloth.ArtworkAt;
        cloth = recipe.Cloth.Size is var (width, height) ? new(-at.X, -at.Y, width - at.X, height - at.Y) : shown;
        stage = cloth.Joined(shown);
        letters = Math.Max(1200, Math.Max(stage.Width, stage.Height) / 75);
        shift = new(Margin - stage.Left, Top - stage.Top);
    }

    /// <summary>Radius of the disc behind a part's letter.</summary>
    private int Badge => letters * 5 / 2;

    private int LabelHeight => letters * 9 / 10;

    private int Margin => 4 * letters;

    private int Top => 11 * letters;

    internal static Picture Of(Recipe recipe, Drawing drawing, Plan plan, ImmutableArray<ListedPart> parts) =>
        new OverviewPicture(recipe, drawing, plan, parts).Draw();

    private Picture Draw()
    {
        var table = new OverviewTable(canvas, letters, plan, parts);
        var threads = new OverviewThreads(canvas, letters, drawing.Threads, parts);
        var key = new OverviewKey(canvas, letters, plan);
        var gap = 4 * letters;
        var (right, footing) = (Margin + stage.Width, Top + stage.Height + (2 * letters));
        // A high work has its tables beside it, a wide one below.
        var (at, under) =
            stage.Height >= stage.Width
                ? (new Point(right + gap, Top), true)
                : (new Point(Margin, footing + (6 * letters)), false);
        var threadsAt = under ? at with { Y = at.Y + table.Height + gap } : at with { X = at.X + table.Width + gap };
        var keyAt = under
            ? at with
            {
                Y = threadsAt.Y + threads.Height + gap,
            }
            : at with
            {
                X = threadsAt.X + threads.Width + gap,
            };
        var width = Math.Max(right, under ? at.X + table.Width : keyAt.X + key.Width) + Margin;
        var tables = under ? keyAt.Y + key.Height : at.Y + Math.Max(table.Height, Math.Max(threads.Height, key.Height));
        var height = Math.Max(footing + (2 * letters), tables) + Margin;

        canvas.Area(new Box(0, 0, width, height), Colour.Of("#fbfaf7"));
        canvas.Text(recipe.Title, new(Margin, 6 * letters), 3 * letters, Colour.Ink);
        canvas.Text(Subtitle(), new(Margin, 9 * letters), letters, Colour.Ink);
        canvas.Area(Laid(cloth), Colour.Of(recipe.Cloth.Color));
        Folds();
        Shapes();
        Fields();
        Seams();
        Corners();
        Letters();
        ScaleBar.Draw(canvas, new(Margin, footing), width - (2 * Margin) - (7 * letters), letters);
        table.Draw(at);
        threads.Draw(threadsAt);
        key.Draw(keyAt);
        return canvas.ToPicture(width, height, $"{recipe.Title}, hoop {plan.Hoop.Name}: overview");
    }

    private string Subtitle() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Figures.Millimetres(drawing.Width)} x {Figures.Millimetres(drawing.Height)} mm in {Figures.Many(plan.Hoopings.Length, "part", "parts")}, hoop {plan.Hoop.Name} ({Figures.Millimetres(plan.Hoop.Width)} x {Figures.Millimetres(plan.Hoop.Height)} mm)"
        );

    /// <summary>On the page, to a tenth of a millimetre: finer is not seen, and makes the picture large.</summary>
    private Point Laid(Point p) => (p + shift).OnTape();

    private Box Laid(Box b) => new(b.Left + shift.X, b.Top + shift.Y, b.Right + shift.X, b.Bottom + shift.Y);

    private Region Laid(Region region) =>
        new([.. region.Polygons.Select(p => new Polygon(Laid(p.Outer), [.. p.Holes.Select(Laid)]))]);

    private Ring Laid(Ring ring) => new([.. ring.Points.Select(Laid)]);

    private void Shapes()
    {
        foreach (var shape in drawing.Shapes)
        {
            var colour = Colour.Of(drawing.Threads[shape.Thread].Color);
            canvas.Area(Laid(Polygons.Simplify(shape.Footprint, Detail)), colour);
            var lines = Texture.Of(shape, letters / 5);
            if (!lines.IsEmpty)
                canvas.Lines(
                    letters / 20,
                    colour.Mixed(new(0, 0, 0), 22),
                    60,
                    [.. lines.Select(line => line.Select(Laid).ToImmutableArray())]
                );
        }
    }

    /// <summary>Where the cloth is folded, and on it the lines that the first part sews.</summary>
    private void Folds()
    {
        foreach (var line in plan.PlacementLines)
        {
            var (from, to) =
                line.Fold == Fold.Upright
                    ? (line.From with { Y = cloth.Top }, line.To with { Y = cloth.Bottom })
                    : (line.From with { X = cloth.Left }, line.To with { X = cloth.Right });
            canvas.Dashes(letters / 8, letters / 2, MarkInk.Placement, Laid(from), Laid(to));
        }
    }

    private void Fields()
    {
        foreach (var (hooping, i) in plan.Hoopings.Select((h, i) => (h, i)))
        {
            var box = Laid(hooping.Field.Bounds).Grown(-letters / 8);
            canvas.Outline(box, letters / 2, Colour.White, 70);
            canvas.Outline(box, letters / 4, MarkInk.Field(i));
        }
    }

    private void Seams()
    {
        foreach (var seam in plan.SeamLines)
        {
            ImmutableArray<Point> line = [.. seam.Line.Points.Select(Laid)];
            canvas.Line(letters / 3, Colour.White, 80, line.AsSpan());
            canvas.Dashes(letters / 6, letters, Colour.Ink, line.AsSpan());
        }
    }

    private void Corners()
    {
        foreach (var corner in plan.Corners)
        {
            var (at, x, y) = (Laid(corner.At), Laid(corner.ArmX), Laid(corner.ArmY));
            canvas.Line(letters / 3, Colour.White, 85, x, at, y);
            canvas.Line(letters / 6, MarkInk.Corner, 100, x, at, y);
            var (right, down) = (Math.Sign(x.X + y.X - (2 * at.X)), Math.Sign(x.Y + y.Y - (2 * at.Y)));
            canvas.Label(
                corner.Id,
                new(at.X + (right * letters / 2), at.Y + (down * letters / 2) + (down > 0 ? LabelHeight : 0)),
                LabelHeight,
                MarkInk.Corner,
                right > 0 ? Side.Left : Side.Right
            );
        }
    }

    private void Letters()
    {
        foreach (var (hooping, i) in plan.Hoopings.Select((h, i) => (h, i)))
        {
            var at = Laid(hooping.Field.Centre);
            var colour = MarkInk.Field(i);
            canvas.Disc(at, Badge, Colour.White, 85);
            canvas.Ring(at, Badge, letters / 4, colour);
            canvas.Text(hooping.Letter, new(at.X, at.Y + (letters * 5 / 4)), letters * 5 / 2, colour, Side.Middle);
            var up = TurnText.HoopUp(hooping.Field.Turn);
            var away = new Point(at.X + (up.X * (Badge + letters)), at.Y + (up.Y * (Badge + letters)));
            Arrow.Draw(canvas, away, up, letters * 3 / 2, letters / 2, Colour.White);
            Arrow.Draw(canvas, away, up, letters * 3 / 2, letters / 4, colour);
        }
    }
}
