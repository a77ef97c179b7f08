using System.Xml.Linq;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Outputs.Sheets;

/// <summary>
/// The folded cloth as it is laid on the first part's placement lines: the folds on the lines, the quarter of it that
/// stays below, and which way it is unfolded.
/// </summary>
internal sealed class FoldPicture(SheetContent sheet, Hooping first)
{
    /// <summary>
    /// Half an arrow over a fold and its rim, in heights of a letter: so far it may reach past the hoop.
    /// </summary>
    private const int Around = 7;

    private readonly HoopFrame frame = new(first.Field, around: Around);
    private readonly Canvas canvas = new();

    internal XElement Draw(string label)
    {
        var letters = frame.Letters;
        canvas.Outline(frame.Inside, letters / 4, Colour.Ink);
        foreach (var line in sheet.Plan.PlacementLines)
            canvas.Dashes(letters / 4, letters, MarkInk.Placement, frame.Lay(line.From), frame.Lay(line.To));
        var stays = frame.Lay(Stays(sheet.Recipe.Cloth, first.Field));
        var seen = stays.Common(frame.Page.Grown(-letters / 2));
        canvas.Area(seen, Colour.Of(sheet.Recipe.Cloth.Color));
        canvas.Lines(letters / 10, MarkInk.Frame, 100, Hatching.Of(seen, 3 * letters));
        // The hoop is below the cloth: its outline shows through where it holds it.
        canvas.DashedOutline(frame.Inside, letters / 6, letters, MarkInk.Frame);
        var folds = sheet.Plan.PlacementLines.Select(line => (Line: line, Away: Away(line)));
        foreach (var (line, away) in folds)
        {
            var (from, to) = Edge(line, seen);
            canvas.Line(letters * 6 / 10, Colour.Ink, 100, from, to);
            // From the cloth over its fold to the bare side.
            var middle = from.Towards(to, 0.5);
            Arrow.Draw(canvas, Off(middle, away, 2 * letters), away, 8 * letters, letters, Colour.White);
            Arrow.Draw(canvas, Off(middle, away, 2 * letters), away, 8 * letters, letters / 3, MarkInk.Placement);
        }
        // Over the cloth, which may reach up there.
        canvas.Text(sheet.Say.Say("hoop.top"), new(frame.Inside.Left, frame.Inside.Top - letters), letters, Colour.Ink);
        return InlineSvg.Of(
            frame.Page.Width,
            frame.Page.Height,
            label,
            "hoop",
            WorkMap.Rectangle(frame.Inside, new XAttribute("fill", "#fff")),
            InlineSvg.Items(canvas)
        );
    }

    /// <summary>The side of each fold that is not folded over, on the drawing.</summary>
    internal static Box Stays(Cloth cloth, Field first)
    {
        var (box, whole) = (cloth.OnDrawing!.Value, cloth.OnDrawing.Value);
        if (cloth.UprightFold is { } upright)
            box = KeepsLeft(cloth, first)
                ? box with
                {
                    Right = whole.Left + upright,
                }
                : box with
                {
                    Left = whole.Left + upright,
                };
        if (cloth.LevelFold is { } level)
            box = KeepsTop(cloth, first)
                ? box with
                {
                    Bottom = whole.Top + level,
                }
                : box with
                {
                    Top = whole.Top + level,
                };
        return box;
    }

    /// <summary>
    /// The larger side stays: least is folded over. Of two alike that stays which has more room in the first field,
    /// where the folds are laid on its lines: the more of a fold lies there, the straighter the cloth comes to lie.
    /// </summary>
    internal static bool KeepsLeft(Cloth cloth, Field first) =>
        KeepsFirst(cloth.UprightFold, cloth.Size!.Value.Width, first.Centre.X - cloth.OnDrawing!.Value.Left);

    /// <inheritdoc cref="KeepsLeft"/>
    internal static bool KeepsTop(Cloth cloth, Field first) =>
        KeepsFirst(cloth.LevelFold, cloth.Size!.Value.Height, first.Centre.Y - cloth.OnDrawing!.Value.Top);

    private static bool KeepsFirst(int? fold, int side, int centre) =>
        2 * fold == side ? centre <= fold : 2 * fold > side;

    /// <summary>Over the fold, in the hoop: towards what is folded back.</summary>
    private Point Away(PlacementLine line)
    {
        var cloth = sheet.Recipe.Cloth;
        var way =
            line.Fold == Fold.Upright
                ? new Point(KeepsLeft(cloth, first.Field) ? 1 : -1, 0)
                : new(0, KeepsTop(cloth, first.Field) ? 1 : -1);
        var (from, to) = (frame.Lay(line.From), frame.Lay(line.From + way));
        return to - from;
    }

    /// <summary>The edge of the folded cloth along a placement line.</summary>
    private (Point From, Point To) Edge(PlacementLine line, Box seen)
    {
        var (a, b) = (frame.Lay(line.From), frame.Lay(line.To));
        return a.X == b.X
            ? (new(a.X, seen.Top), new Point(a.X, seen.Bottom))
            : (new(seen.Left, a.Y), new Point(seen.Right, a.Y));
    }

    private static Point Off(Point from, Point way, int by) => new(from.X + (way.X * by), from.Y + (way.Y * by));
}
