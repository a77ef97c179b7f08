using System.Globalization;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fit;
using Splitter.Recipes;

namespace Splitter.Outputs.Pictures;

/// <summary>At the worst place of a join its parts and how far they may miss each other there, mm.</summary>
internal sealed record ErrorTag(string Text, Point At, Box Box, bool Exceeds, int Letters)
{
    private int Height => CornerName.HeightOf(Letters);

    private Colour Ink => Exceeds ? MarkInk.TooFar : Colour.Ink;

    internal static ErrorTag Of(Recipe recipe, Plan plan, PartJoin join, Point at, LabelRoom room, int letters)
    {
        var text = string.Create(
            CultureInfo.InvariantCulture,
            $"{plan.Hoopings[join.Earlier].Letter}-{plan.Hoopings[join.Later].Letter} {join.Within95 / Units.Millimetre:0.0}"
        );
        var exceeds = JoinFit.Exceeds(join, recipe.Overlap.Edges);
        var tag = new ErrorTag(text, at, default, exceeds, letters);
        var width = StrokeFont.WidthOf(text, tag.Height) + (2 * tag.Pad);
        return tag with { Box = room.Beside(at, width, tag.Height + (2 * tag.Pad), (0, -1)) };
    }

    private int Pad => Letters * 3 / 10;

    internal void DrawLine(Canvas canvas)
    {
        var near = LabelRoom.Nearest(At, Box);
        canvas.Line(Letters * 2 / 5, Colour.White, 100, At, near);
        canvas.Line(Letters / 6, Ink, 100, At, near);
        canvas.Disc(At, Letters * 9 / 20, Colour.White);
        canvas.Disc(At, Letters * 3 / 10, Ink);
    }

    internal void Draw(Canvas canvas)
    {
        canvas.Area(Box, Exceeds ? Ink : Colour.White);
        canvas.Outline(Box, Letters / 10, Ink);
        canvas.Text(Text, new(Box.Left + Pad, Box.Bottom - Pad), Height, Exceeds ? Colour.White : Ink);
    }
}
