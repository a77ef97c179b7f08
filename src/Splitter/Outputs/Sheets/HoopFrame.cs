using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Outputs.Sheets;

/// <summary>
/// A hoop on the page as the machine holds it: where the drawing's points lie in it, and room around it for words.
/// </summary>
internal sealed class HoopFrame
{
    /// <summary>Heights of a letter along the longer side of the field.</summary>
    private const int LettersToASide = 54;

    private readonly Field field;

    /// <param name="beside">
    /// Further room on the machine's side, in heights of a letter, if that is left or right.
    /// </param>
    /// <param name="above">The same if it is the top or the bottom.</param>
    /// <param name="around">Room on every side; one more above, for words.</param>
    internal HoopFrame(Field field, int beside = 0, int above = 0, int around = 2)
    {
        this.field = field;
        var hoop = field.Hoop;
        Letters = Math.Max(hoop.Width, hoop.Height) / LettersToASide;
        var left = MarginOn(HoopSide.Left, around);
        var top = MarginOn(HoopSide.Top, around + 1);
        Inside = new(left, top, left + hoop.Width, top + hoop.Height);
        Page = new(
            0,
            0,
            Inside.Right + MarginOn(HoopSide.Right, around),
            Inside.Bottom + MarginOn(HoopSide.Bottom, around)
        );

        int MarginOn(HoopSide side, int usual) =>
            (
                usual
                + (
                    hoop.Throat?.Side != side ? 0
                    : side is HoopSide.Left or HoopSide.Right ? beside
                    : above
                )
            ) * Letters;
    }

    /// <summary>Height of a capital.</summary>
    internal int Letters { get; }

    /// <summary>What can be sewn.</summary>
    internal Box Inside { get; }

    /// <summary>All of the picture.</summary>
    internal Box Page { get; }

    internal Point Lay(Point p)
    {
        var at = field.ToField(p);
        return new(Inside.Centre.X + at.U, Inside.Centre.Y - at.V);
    }

    internal Box Lay(Box box) => Box.Around([Lay(new Point(box.Left, box.Top)), Lay(new Point(box.Right, box.Bottom))]);

    /// <summary>From the drawing to the hoop, as SVG says it.</summary>
    internal string Laying() =>
        $"{InlineSvg.Moved(Inside.Centre)}rotate({-(int)field.Turn})"
        + InlineSvg.Moved(new(-field.Centre.X, -field.Centre.Y));

    /// <summary>From the middle towards a side.</summary>
    internal static Point Towards(HoopSide side) =>
        side switch
        {
            HoopSide.Right => new(1, 0),
            HoopSide.Top => new(0, -1),
            HoopSide.Left => new(-1, 0),
            _ => new(0, 1),
        };
}
