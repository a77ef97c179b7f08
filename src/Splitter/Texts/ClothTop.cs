using Splitter.Geometry;

namespace Splitter.Texts;

/// <summary>Which way round the cloth lies in a hoop: marks alone do not show it before it is down.</summary>
internal static class ClothTop
{
    internal static string In(Phrasebook say, Turn turn) =>
        turn switch
        {
            Turn.None => say.Say("cloth-top.top"),
            Turn.Quarter => say.Say("cloth-top.left"),
            Turn.Half => say.Say("cloth-top.bottom"),
            _ => say.Say("cloth-top.right"),
        };
}
