using System.Xml.Linq;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;
using Splitter.Parts;

namespace Splitter.Outputs.Sheets;

/// <summary>What the signs in the pictures of a hoop mean: those that this work has.</summary>
internal static class SignKey
{
    /// <summary>Side of a sign, and of what is drawn in it, µm.</summary>
    private const int Side = 12 * Units.Millimetre,
        Arm = 7 * Units.Millimetre,
        Near = 3 * Units.Millimetre,
        Pen = 1200,
        Fine = 500;

    private static readonly Point Middle = new(Side / 2, Side / 2);

    internal static XElement Of(SheetContent sheet)
    {
        var (say, plan) = (sheet.Say, sheet.Plan);
        var signs = new List<(string Text, Action<Canvas> Draw)> { (say.Say("sign.arrow"), Up) };
        if (!plan.PlacementLines.IsEmpty)
            signs.Add((say.Say("sign.fold"), Fold));
        if (!plan.Corners.IsEmpty)
        {
            signs.Add((say.Say("sign.corner"), canvas => Corner(canvas, Pen, hole: true)));
            signs.Add((say.Say("sign.later"), canvas => Corner(canvas, Fine, hole: false)));
        }
        if (sheet.Parts.Any(listed => !listed.Part.TakenOut.IsEmpty))
            signs.Add((say.Say("sign.out"), Out));
        if (plan.Hoopings.Any(h => !h.Alignments.IsEmpty))
            signs.Add((say.Say("sign.cross"), canvas => AlignmentSign.Draw(canvas, Middle, Side / 2)));
        if (!sheet.Ground.Dense.IsEmpty)
            signs.Add((say.Say("sign.dense"), canvas => DenseSign.Draw(canvas, Middle, Side / 2)));
        if (plan.Hoopings.Any(h => !ClothEdge.Of(sheet.Recipe.Cloth, h.Field).IsEmpty))
            signs.Add((say.Say("sign.bare"), canvas => Bare(canvas, Colour.Of(sheet.Recipe.Cloth.Color))));
        if (plan.Hoop.Throat is not null)
            signs.Add((say.Say("sign.throat"), Throat));
        return Html.Classed(
            "ul",
            "corners",
            signs.Select(sign => Html.Element("li", Sign(say.Say("sign.picture"), sign.Draw), sign.Text))
        );
    }

    private static XElement Sign(string label, Action<Canvas> draw)
    {
        var canvas = new Canvas();
        draw(canvas);
        return InlineSvg.Of(Side, Side, label, "corner", InlineSvg.Items(canvas));
    }

    private static void Up(Canvas canvas) => Arrow.Draw(canvas, Middle, new(0, -1), Arm, Pen, Colour.Ink);

    private static void Fold(Canvas canvas) =>
        canvas.Dashes(Fine, Pen, MarkInk.Placement, new(0, Side / 2), new(Side, Side / 2));

    private static void Corner(Canvas canvas, int pen, bool hole)
    {
        var at = new Point(Near, Side - Near);
        canvas.Line(pen, MarkInk.Corner, 100, at with { X = Near + Arm }, at, at with { Y = Side - Near - Arm });
        if (hole)
            canvas.Disc(at, Pen, Colour.Ink);
    }

    private static void Out(Canvas canvas)
    {
        Corner(canvas, Fine, hole: false);
        HoopMarks.CrossOut(canvas, new(Near, Side - Near), Pen, Fine);
    }

    private static void Bare(Canvas canvas, Colour cloth)
    {
        canvas.Lines(Fine / 2, MarkInk.Frame, 100, Hatching.Of(new(0, 0, Side, Side), 3 * Fine));
        canvas.Area(new Box(0, 0, Side / 2, Side), cloth);
        canvas.Line(Fine, Colour.Ink, 100, new(Side / 2, 0), new(Side / 2, Side));
    }

    private static void Throat(Canvas canvas)
    {
        canvas.Line(Fine, Colour.Ink, 100, new(Near, 0), new(Near, Side));
        canvas.Line(3 * Pen, Colour.Ink, 100, new(Side - Near, Near), new(Side - Near, Side - Near));
    }
}
