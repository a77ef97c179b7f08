using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Parts;
using Splitter.Planning;
using Splitter.Recipes;
using Splitter.Texts;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// A part in its field as the machine holds it, in true scale: every stitch, and the marks with their names. Printed at
/// full size it lies on the work.
/// </summary>
internal sealed class PartPicture
{
    private const int Margin = 12 * Units.Millimetre;
    private const int Header = 36 * Units.Millimetre;
    private const int NarrowestPage = 150 * Units.Millimetre;
    private const int RowHeight = 6 * Units.Millimetre;
    private const int ColumnWidth = 88 * Units.Millimetre;
    internal const int Letters = 2600;

    /// <summary>Room for the name of a step; a longer one is cut short.</summary>
    internal const int NameWidth = 52 * Units.Millimetre;

    private readonly Canvas canvas = new();
    private readonly Phrasebook say;
    private readonly Part part;
    private readonly Plan plan;
    private readonly Point centre;
    private readonly Box field;
    private readonly int pageWidth;

    /// <summary>What the person calls it.</summary>
    private readonly string name;

    private PartPicture(Phrasebook say, Plan plan, Part part, bool moved)
    {
        name = say.Say(moved ? "corrected.part" : "part.title", ("part", part.Letter));
        (this.say, this.plan, this.part) = (say, plan, part);
        pageWidth = WholeMillimetres(Math.Max(NarrowestPage, plan.Hoop.Width + (2 * Margin)));
        centre = new Point(pageWidth / 2, Header + Margin + (plan.Hoop.Height / 2)).OnTape();
        field = new(
            centre.X - (plan.Hoop.Width / 2),
            centre.Y - (plan.Hoop.Height / 2),
            centre.X + (plan.Hoop.Width / 2),
            centre.Y + (plan.Hoop.Height / 2)
        );
    }

    /// <summary>
    /// Rounded up: a pixel of a picture in true scale is then the same share of a millimetre both ways.
    /// </summary>
    private static int WholeMillimetres(int length) =>
        (length + Units.Millimetre - 1) / Units.Millimetre * Units.Millimetre;

    /// <param name="time">At the machine, as every table tells it.</param>
    /// <param name="moved">Onto the sewn work, after it came out beside its place.</param>
    internal static Picture Of(
        Recipe recipe,
        Plan plan,
        Part part,
        PartFigures figures,
        string time,
        bool moved = false
    )
    {
        var drawn = new PartPicture(new(recipe.Output), plan, part, moved);
        return drawn.Draw(recipe, figures, time);
    }

    private Picture Draw(Recipe recipe, PartFigures figures, string time)
    {
        var below = field.Bottom + Margin + RowHeight;
        var columns = Math.Max(1, (pageWidth - (2 * Margin)) / ColumnWidth);
        var rows = (part.Steps.Length + columns - 1) / columns;
        var height = WholeMillimetres(below + (3 * RowHeight) + (rows * RowHeight) + Margin);
        canvas.Area(new Box(0, 0, pageWidth, height), Colour.White);
        Heading(recipe, figures, time);
        canvas.Cloth(field, Colour.Of(recipe.Cloth.Color));
        // Marks above the artwork, whenever they are sewn: they are what a person looks for.
        foreach (var step in part.Steps.OrderBy(s => s.Kind != StepKind.Body))
            Stitches(step);
        Frame();
        new PartMarks(plan, part, Lay, field, Margin).Draw(canvas);
        ScaleBar.Draw(canvas, new(Margin, below), pageWidth - (2 * Margin) - (20 * Units.Millimetre), Letters);
        Steps(below + (3 * RowHeight), rows, figures);
        var title = say.Say("picture.title", ("title", recipe.Title), ("hoop", plan.Hoop.Name), ("part", part.Letter));
        return canvas.ToPicture(pageWidth, height, title);
    }

    private void Heading(Recipe recipe, PartFigures figures, string time)
    {
        var counts = figures.Counts;
        canvas.Text(name, new(Margin, 17 * Units.Millimetre), 7000, Colour.Ink);
        canvas.Text(
            Fitted(recipe.Title, pageWidth - (2 * Margin) - StrokeFont.WidthOf($"{name}  ", 7000), 4500),
            new(pageWidth - Margin, 17 * Units.Millimetre),
            4500,
            Colour.Ink,
            Side.Right
        );
        var amounts = say.Say(
            "picture.amounts",
            ("hoop", plan.Hoop.Name),
            ("field", say.Numbers.Size(plan.Hoop.Width, plan.Hoop.Height)),
            ("stitches", say.Many("stitches", counts.Stitches)),
            ("trims", say.Many("trims", counts.Trims)),
            ("stops", say.Many("stops", counts.Stops)),
            ("time", time)
        );
        // One language takes more room than another.
        var fits = (double)(pageWidth - (2 * Margin)) / StrokeFont.WidthOf(amounts, Letters);
        canvas.Text(amounts, new(Margin, 25 * Units.Millimetre), Units.Round(Math.Min(1, fits) * Letters), Colour.Ink);
        canvas.Text(TurnText.EdgeUp(say, part.Field.Turn), new(Margin, 31 * Units.Millimetre), Letters, Colour.Ink);
    }

    private static string Fitted(string text, int room, int height)
    {
        while (text.Length > 1 && StrokeFont.WidthOf(text, height) > room)
            text = text[..^1];
        return text;
    }

    private Point Lay(Point p)
    {
        var at = part.Field.ToField(p);
        return new(centre.X + at.U, centre.Y - at.V);
    }

    private void Stitches(Step step)
    {
        canvas.Thread(
            [.. step.Moves.Select(m => m.Block.Stitches.Select(s => Lay(s.At)).ToImmutableArray())],
            ColourOf(step)
        );
    }

    private static Colour ColourOf(Step step) =>
        step.Kind switch
        {
            StepKind.Placement => MarkInk.Placement,
            StepKind.Alignment => MarkInk.Alignment,
            StepKind.Corners or StepKind.NextCorners => MarkInk.Corner,
            _ => Colour.Of(step.Thread!.Color),
        };

    /// <summary>
    /// The field, the ground that may be sewn, the middle of each edge, and the way up on the drawing.
    /// </summary>
    private void Frame()
    {
        canvas.Outline(field, 500, Colour.Ink);
        canvas.DashedOutline(field.Grown(-part.Field.Clearance), 200, 2000, MarkInk.Frame);
        const int Tick = 4 * Units.Millimetre;
        canvas.Line(300, Colour.Ink, 100, new(centre.X, field.Top), new(centre.X, field.Top - Tick));
        canvas.Line(300, Colour.Ink, 100, new(centre.X, field.Bottom), new(centre.X, field.Bottom + Tick));
        canvas.Line(300, Colour.Ink, 100, new(field.Left, centre.Y), new(field.Left - Tick, centre.Y));
        canvas.Line(300, Colour.Ink, 100, new(field.Right, centre.Y), new(field.Right + Tick, centre.Y));
        var up = TurnText.DrawingUp(part.Field.Turn);
        var away = new Point(
            centre.X + (up.X * ((plan.Hoop.Width / 2) + (Margin / 2))),
            centre.Y + (up.Y * ((plan.Hoop.Height / 2) + (Margin / 2)))
        );
        // Beside the tick of that edge, so that both are seen.
        var beside = new Point(Math.Abs(up.Y) * 8 * Units.Millimetre, Math.Abs(up.X) * 8 * Units.Millimetre);
        Arrow.Draw(canvas, away + beside, up, 8 * Units.Millimetre, Colour.Ink);
    }

    private string NameOf(Step step) =>
        step.Kind switch
        {
            StepKind.Placement => say.Say("picture.placement"),
            StepKind.Corners => say.Say("picture.corners"),
            StepKind.Alignment => say.Say("picture.alignment"),
            StepKind.NextCorners => say.Say("picture.next-corners"),
            _ => step.Thread!.Name,
        };

    private void Steps(int top, int rows, PartFigures figures)
    {
        foreach (var step in part.Steps)
        {
            var (column, row) = Math.DivRem(step.Number - 1, rows);
            var (x, y) = (Margin + (column * ColumnWidth), top + (row * RowHeight));
            canvas.Text($"{step.Number}", new(x + 5000, y), Letters, Colour.Ink, Side.Right);
            var swatch = new Box(x + 8000, y - 3200, x + 16_000, y + 600);
            canvas.Area(swatch, ColourOf(step));
            canvas.Outline(swatch, 150, MarkInk.Frame);
            canvas.Text(Fitted(NameOf(step), NameWidth, Letters), new(x + 18_500, y), Letters, Colour.Ink);
            canvas.Text(
                Numbers.Count(figures.Counts.Steps[step.Number - 1]),
                new(x + 80_000, y),
                Letters,
                Colour.Ink,
                Side.Right
            );
        }
    }
}
