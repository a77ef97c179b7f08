using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning.Seams;
using Splitter.Texts;

namespace Splitter.Outputs.Pictures;

/// <summary>Seams as they are drawn: the more a misfit shows, the stronger; told apart without colours too.</summary>
internal static class SeamInk
{
    private static readonly Colour Bare = Colour.Of("#2e7d32");
    private static readonly Colour Fill = Colour.Of("#e08a00");

    internal static void Draw(Canvas canvas, SeamGround ground, int letters, ImmutableArray<Point> line)
    {
        switch (ground)
        {
            case SeamGround.Whole:
                // Only so that the eye can follow from seam to seam.
                canvas.Line(letters / 12, Colour.White, 55, line.AsSpan());
                break;
            case SeamGround.Bare:
                canvas.Dashes(letters / 5, letters * 7 / 10, Bare, line.AsSpan());
                break;
            case SeamGround.Fill:
                canvas.Line(letters / 4, Fill, 100, line.AsSpan());
                break;
            default:
                canvas.Line(letters / 2, MarkInk.TooFar, 100, line.AsSpan());
                break;
        }
    }

    internal static string Says(Phrasebook say, SeamGround ground) =>
        ground switch
        {
            SeamGround.Whole => say.Say("overview.seam.whole"),
            SeamGround.Bare => say.Say("overview.seam.bare"),
            SeamGround.Fill => say.Say("overview.seam.fill"),
            _ => say.Say("overview.seam.lines"),
        };
}
