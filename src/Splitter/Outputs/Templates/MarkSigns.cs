using Splitter.Geometry;
using Splitter.Outputs.Pictures;
using Splitter.Planning;

namespace Splitter.Outputs.Templates;

/// <summary>
/// What a person measures from, in true place: corners, alignment crosses, crosses at centres, and their names.
/// </summary>
internal sealed class MarkSigns(Canvas canvas, Box ground)
{
    private const int CentreArm = 8 * Units.Millimetre;
    private const int ArrowLength = 10 * Units.Millimetre;

    private readonly LabelRoom room = new(ground, TemplateInk.Letters);

    /// <summary>Names wait until every sign has its place.</summary>
    private readonly List<Action> names = [];

    internal void Corner(string id, Point at, Point armX, Point armY, bool dashed)
    {
        canvas.Line(TemplateInk.Strong, MarkInk.Corner, 100, armX, at, armY);
        CornerRing.Draw(canvas, at, dashed);
        room.Take(Box.Around([armX, at]).Grown(TemplateInk.Strong));
        room.Take(Box.Around([at, armY]).Grown(TemplateInk.Strong));
        room.Take(Box.Around([at]).Grown(TemplateInk.Ring));
        names.Add(() =>
        {
            var name = MarkName.Of(id, at, armX, armY, room, TemplateInk.Letters, TemplateInk.Ring);
            name.DrawLine(canvas);
            name.Draw(canvas);
        });
    }

    /// <param name="number">The work sheet says what it should meet.</param>
    internal void Alignment(string number, Point at)
    {
        var arm = AlignmentStitch.Arm;
        canvas.Lines(
            TemplateInk.Strong,
            MarkInk.Alignment,
            100,
            [
                [at with { X = at.X - arm }, at with { X = at.X + arm }],
                [at with { Y = at.Y - arm }, at with { Y = at.Y + arm }],
            ]
        );
        room.Take(Box.Around([at]).Grown(arm));
        Name(number, at, TemplateInk.Letters, MarkInk.Alignment, default);
    }

    /// <summary>A field's centre, and the way to the hoop's top.</summary>
    /// <param name="top">The word for the hoop's top.</param>
    internal void Centre(string letter, string top, Point at, Point up, Colour colour)
    {
        Cross(at, CentreArm, colour);
        canvas.Ring(at, TemplateInk.Ring, TemplateInk.Fine, colour);
        var from = Off(at, up, CentreArm + TemplateInk.Ring);
        var tip = Off(from, up, ArrowLength);
        Arrow.Draw(canvas, Off(from, up, ArrowLength / 2), up, ArrowLength, 2 * TemplateInk.Strong, colour);
        room.Take(Box.Around([at]).Grown(CentreArm));
        room.Take(Box.Around([from, tip]).Grown(ArrowLength / 5));
        room.Take(Box.Around([Off(tip, up, -ArrowLength / 5)]).Grown(ArrowLength * 2 / 5));
        Name(letter, Off(from, up, ArrowLength / 2), TemplateInk.LargeLetters, colour, default);
        Name(top, tip, TemplateInk.SmallLetters, colour, (up.X, up.Y));
    }

    /// <summary>A name near a point, where it hides least.</summary>
    internal void Name(string text, Point at, int height, Colour colour, (int, int) towards) =>
        names.Add(() =>
        {
            var box = room.Beside(at, StrokeFont.WidthOf(text, height), height, towards);
            canvas.Label(text, new(box.Left, box.Bottom), height, colour);
        });

    /// <summary>An edge of a field: names may lie on it if they must.</summary>
    internal void Edge(Box box)
    {
        room.Cross([
            new(box.Left, box.Top),
            new(box.Right, box.Top),
            new(box.Right, box.Bottom),
            new(box.Left, box.Bottom),
            new(box.Left, box.Top),
        ]);
    }

    /// <summary>A name beside it would be seen.</summary>
    internal bool HasRoom(Point at) => ground.Contains(at);

    internal void Line(Point from, Point to) => room.Cross([from, to]);

    /// <summary>What would be hidden below a box; nothing stands beside the ground.</summary>
    internal double Hides(Box box) => box.Common(ground) is { IsEmpty: false } common ? room.Cost(common) : 0;

    internal void DrawNames()
    {
        foreach (var name in names)
            name();
    }

    private void Cross(Point at, int arm, Colour colour) =>
        canvas.Lines(
            TemplateInk.Strong,
            colour,
            100,
            [
                [at with { X = at.X - arm }, at with { X = at.X + arm }],
                [at with { Y = at.Y - arm }, at with { Y = at.Y + arm }],
            ]
        );

    private static Point Off(Point from, Point way, int by) => new(from.X + (way.X * by), from.Y + (way.Y * by));
}
