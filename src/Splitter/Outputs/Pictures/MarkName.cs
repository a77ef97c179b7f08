using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>The name of a corner or a cross, and a line to it where the name had to go farther off.</summary>
internal sealed record MarkName(string Id, Point At, Box Box, int Letters)
{
    /// <summary>A name no farther from its mark than this needs no line, in tenths of a letter's height.</summary>
    private const int Near = 11;

    private int Height => HeightOf(Letters);

    /// <summary>The smallest words of a map.</summary>
    internal static int HeightOf(int letters) => letters * 9 / 10;

    private Colour Ink { get; init; } = MarkInk.Corner;

    /// <summary>How far the mark itself reaches from its middle.</summary>
    private int Reach { get; init; }

    /// <summary>Between the arms if that is clear.</summary>
    /// <param name="reach">Of its ring, if it has one.</param>
    internal static MarkName Of(
        string id,
        Point at,
        Point armX,
        Point armY,
        LabelRoom room,
        int letters,
        int reach = 0
    ) =>
        new MarkName(id, at, default, letters) { Reach = reach }.Placed(
            room,
            (Math.Sign(armX.X + armY.X - (2 * at.X)), Math.Sign(armX.Y + armY.Y - (2 * at.Y)))
        );

    /// <summary>Beside an alignment cross.</summary>
    /// <param name="reach">Of its ring, if it has one.</param>
    internal static MarkName OfCross(string number, Point at, LabelRoom room, int letters, int reach = 0) =>
        (new MarkName(number, at, default, letters) { Ink = MarkInk.Alignment, Reach = reach }).Placed(room, default);

    private MarkName Placed(LabelRoom room, (int, int) towards) =>
        this with
        {
            Box = room.Beside(At, StrokeFont.WidthOf(Id, Height), Height, towards),
        };

    internal void DrawLine(Canvas canvas)
    {
        var near = LabelRoom.Nearest(At, Box);
        var away = At.DistanceTo(near);
        if ((away - Reach) * 10 <= Near * Letters)
            return;
        // Not up to the point itself: that is for the tack.
        var from = At.Towards(near, Math.Max(Reach, Letters * 4 / 10) / away);
        canvas.Line(Letters * 3 / 10, Colour.White, 100, from, near);
        canvas.Line(Letters / 10, Ink, 100, from, near);
    }

    internal void Draw(Canvas canvas) => canvas.Label(Id, new(Box.Left, Box.Bottom), Height, Ink);
}
