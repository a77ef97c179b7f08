using Splitter.Geometry;
using Splitter.Texts;

namespace Splitter.Outputs.Pictures;

/// <summary>Which way a hoop lies, as a person sees it.</summary>
internal static class TurnText
{
    /// <summary>Which edge of the hoop, as the machine holds it, is up on the drawing.</summary>
    internal static string EdgeUp(Phrasebook say, Turn turn) =>
        turn switch
        {
            Turn.None => say.Say("picture.up.top"),
            Turn.Quarter => say.Say("picture.up.left"),
            Turn.Half => say.Say("picture.up.bottom"),
            _ => say.Say("picture.up.right"),
        };

    /// <summary>Where the hoop's upper edge points on the drawing.</summary>
    internal static string Short(Phrasebook say, Turn turn) =>
        turn switch
        {
            Turn.None => say.Say("overview.turn.none"),
            Turn.Quarter => say.Say("overview.turn.right"),
            Turn.Half => say.Say("overview.turn.half"),
            _ => say.Say("overview.turn.left"),
        };

    /// <summary>Towards the drawing's top, as seen in the hoop: x right, y down.</summary>
    internal static Point DrawingUp(Turn turn) =>
        turn switch
        {
            Turn.None => new(0, -1),
            Turn.Quarter => new(-1, 0),
            Turn.Half => new(0, 1),
            _ => new(1, 0),
        };

    /// <summary>Towards the hoop's upper edge, as seen on the drawing.</summary>
    internal static Point HoopUp(Turn turn) =>
        turn switch
        {
            Turn.None => new(0, -1),
            Turn.Quarter => new(1, 0),
            Turn.Half => new(0, 1),
            _ => new(-1, 0),
        };
}
