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

    /// <summary>Height of a capital of the table; everything else is a multiple of it, so that a small work gets a small page.</summary>
    private readonly int letters;

    private readonly Point shift;

    private OverviewPicture(Recipe recipe, Drawing drawing, Plan plan, ImmutableArray<ListedPart> parts)
    {
        (this.recipe, this.drawing, this.plan, this.parts) = (recipe, drawing, plan, parts);
        stage = Box.Around([
            new Box(0, 0, drawing.Width, drawing.Height),
            drawing.Bounds,
            .. plan.Hoopings.Select(h => h.Field.Bounds),
        ]);
        letters = Math.Max(1200, Math.Max(stage.Width, stage.Height) / 75);
        shift = new(Margin - stage.Left, Top - stage.Top);
    }

    private int Margin => 4 * letters;

    private int Top => 11 * letters;

    internal static Picture Of(Recipe recipe, Drawing drawing, Plan plan, ImmutableArray<ListedPart> parts) =>
        new OverviewPicture(recipe, drawing, plan, parts).Draw();

    private Picture Draw()
    {
        var table = new OverviewTable(canvas, letters, plan, parts);
        // A high work has its table beside it, a wide one below.
        var beside = stage.Height >= stage.Width;
        var right = Margin + stage.Width;
        var bottom = Top + stage.Height;
        var width = beside
            ? right + (3 * letters) + table.Width + Margin
            : Math.Max(right + Margin, table.Width + (2 * Margin));
        var footing = bottom + (2 * letters);
        var tableTop = beside ? Top : footing + (6 * letters);
        var height = Math.Max(footing + (2 * letters), tableTop + table.Height) + Margin;

        canvas.Area(new Box(0, 0, width, height), Colour.Of("#fbfaf7"));
        canvas.Text(recipe.Title, new(Margin, 6 * letters), 3 * letters, Colour.Ink);
        canvas.Text(Subtitle(), new(Margin, 9 * letters), letters, Colour.Ink);
        canvas.Area(Laid(stage), Colour.Of(recipe.Cloth.Color));
        foreach (var shape in drawing.Shapes)
            canvas.Area(
                Laid(Polygons.Simplify(shape.Footprint, Detail)),
                Colour.Of(drawing.Threads[shape.Thread].Color)
            );
        Fields();
        Seams();
        Corners();
        Letters();
        ScaleBar.Draw(canvas, new(Margin, footing), width - (2 * Margin) - (7 * letters), letters);
        table.Draw(new(beside ? right + (3 * letters) : Margin, tableTop));
        return canvas.ToPicture(width, height, $"{recipe.Title}, hoop {plan.Hoop.Name}: overview");
    }

    private string Subtitle() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Figures.Millimetres(drawing.Width)} x {Figures.Millimetres(drawing.Height)} mm in {Figures.Many(plan.Hoopings.Length, "part", "parts")}, hoop {plan.Hoop.Name} ({Figures.Millimetres(plan.Hoop.Width)} x {Figures.Millimetres(plan.Hoop.Height)} mm)"
        );

    private Point Laid(Point p) => p + shift;

    private Box Laid(Box b) => new(b.Left + shift.X, b.Top + shift.Y, b.Right + shift.X, b.Bottom + shift.Y);

    private Region Laid(Region region) =>
        new([.. region.Polygons.Select(p => new Polygon(Laid(p.Outer), [.. p.Holes.Select(Laid)]))]);

    private Ring Laid(Ring ring) => new([.. ring.Points.Select(Laid)]);

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
                new(at.X - (right * letters / 2), at.Y - (down * letters / 2) + (down > 0 ? 0 : letters * 9 / 10)),
                letters * 9 / 10,
                MarkInk.Corner,
                right > 0 ? Side.Right : Side.Left
            );
        }
    }

    private void Letters()
    {
        foreach (var (hooping, i) in plan.Hoopings.Select((h, i) => (h, i)))
        {
            var at = Laid(hooping.Field.Centre);
            var colour = MarkInk.Field(i);
            canvas.Disc(at, 3 * letters, Colour.White, 88);
            canvas.Ring(at, 3 * letters, letters / 4, colour);
            canvas.Text(hooping.Letter, new(at.X, at.Y + (letters * 3 / 2)), 3 * letters, colour, Side.Middle);
            var up = TurnText.HoopUp(hooping.Field.Turn);
            var away = new Point(at.X + (up.X * 4 * letters), at.Y + (up.Y * 4 * letters));
            Arrow.Draw(canvas, away, up, letters * 3 / 2, colour);
        }
    }
}
