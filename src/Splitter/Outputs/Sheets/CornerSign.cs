using System.Xml.Linq;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;
using Splitter.Planning;

namespace Splitter.Outputs.Sheets;

/// <summary>
/// One corner as it lies in the hoop: which way its arms go, and the hole that the tack goes through.
/// </summary>
internal static class CornerSign
{
    /// <summary>Side of the little picture, and length of an arm in it, µm.</summary>
    private const int Side = 12 * Units.Millimetre,
        Arm = 8 * Units.Millimetre,
        Pen = 1200,
        Hole = 1100;

    internal static XElement Draw(SheetContent sheet, Field field, Corner corner)
    {
        var (right, up) = Arms(field, corner);
        var at = new Point((Side - (right * Arm)) / 2, (Side + (up * Arm)) / 2);
        var canvas = new Canvas();
        canvas.Line(
            Pen,
            MarkInk.Corner,
            100,
            at with
            {
                X = at.X + (right * Arm),
            },
            at,
            at with
            {
                Y = at.Y - (up * Arm),
            }
        );
        canvas.Disc(at, Hole, Colour.Ink);
        return InlineSvg.Of(Side, Side, Shape(sheet, field, corner), "corner", InlineSvg.Items(canvas));
    }

    /// <summary>Which way its arms go, in words.</summary>
    internal static string Shape(SheetContent sheet, Field field, Corner corner) =>
        Arms(field, corner) switch
        {
            (1, 1) => sheet.Say.Say("arms.right-up"),
            (1, _) => sheet.Say.Say("arms.right-down"),
            (_, 1) => sheet.Say.Say("arms.left-up"),
            _ => sheet.Say.Say("arms.left-down"),
        };

    /// <summary>Signs of u and v along the arms.</summary>
    private static (int Right, int Up) Arms(Field field, Corner corner)
    {
        var (at, x, y) = (field.ToField(corner.At), field.ToField(corner.ArmX), field.ToField(corner.ArmY));
        return (Math.Sign(x.U + y.U - (2 * at.U)), Math.Sign(x.V + y.V - (2 * at.V)));
    }
}
