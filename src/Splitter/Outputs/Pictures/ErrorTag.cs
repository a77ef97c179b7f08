using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Texts;

namespace Splitter.Outputs.Pictures;

/// <summary>At the weakest place of a join its parts and how far they may miss each other, mm.</summary>
internal sealed record ErrorTag(string Text, Point At, Box Box, bool Exceeds, int Letters)
{
    /// <summary>Of joins that no overlap covers, how many are told on a map that has no room for more.</summary>
    private const int MostOnCrowded = 6;

    private int Height => MarkName.HeightOf(Letters);

    private Colour Ink => Exceeds ? MarkInk.TooFar : Colour.Ink;

    /// <summary>The joins whose figure stands on the map: all, or the worst of those that need another look.</summary>
    internal static IEnumerable<PartJoin> Shown(Plan plan, bool crowded) =>
        crowded
            ? plan.Joins.Where(j => !j.IsCovered).OrderByDescending(j => j.Within95 - j.Covers).Take(MostOnCrowded)
            : plan.Joins;

    internal static ErrorTag Of(Plan plan, Numbers numbers, PartJoin join, Point at, LabelRoom room, int letters)
    {
        var (earlier, later) = (plan.Hoopings[join.Earlier].Letter, plan.Hoopings[join.Later].Letter);
        var text = $"{earlier}-{later} {numbers.Misfit(join.Within95)}";
        var tag = new ErrorTag(text, at, default, !join.IsCovered, letters);
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
