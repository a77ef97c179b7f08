using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>A corner's name on a map, and a line to the corner where it had to go farther off.</summary>
internal sealed record CornerName(string Id, Point At, Box Box, int Letters)
{
    /// <summary>A name no farther from its corner than this needs no line, in tenths of a letter's height.</summary>
    private const int Near = 11;

    private int Height => HeightOf(Letters);

    /// <summary>The smallest words of a map.</summary>
    internal static int HeightOf(int letters) => letters * 9 / 10;

    /// <summary>Between the arms if that is clear.</summary>
    internal static CornerName Of(string id, Point at, Point armX, Point armY, LabelRoom room, int letters)
    {
        var name = new CornerName(id, at, default, letters);
        var inside = (Math.Sign(armX.X - at.X), Math.Sign(armY.Y - at.Y));
        return name with { Box = room.Beside(at, StrokeFont.WidthOf(id, name.Height), name.Height, inside) };
    }

    internal void DrawLine(Canvas canvas)
    {
        var near = LabelRoom.Nearest(At, Box);
        if (At.DistanceTo(near) * 10 <= Near * Letters)
            return;
        // Not up to the point itself: that is for the tack.
        var from = At.Towards(near, Letters * 4 / 10 / At.DistanceTo(near));
        canvas.Line(Letters * 3 / 10, Colour.White, 100, from, near);
        canvas.Line(Letters / 10, MarkInk.Corner, 100, from, near);
    }

    internal void Draw(Canvas canvas) => canvas.Label(Id, new(Box.Left, Box.Bottom), Height, MarkInk.Corner);
}
