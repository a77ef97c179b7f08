using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>Which way a hoop lies, as a person sees it.</summary>
internal static class TurnText
{
    /// <summary>The edge of the hoop, as the machine holds it, that is up on the drawing.</summary>
    internal static string EdgeUp(Turn turn) =>
        turn switch
        {
            Turn.None => "upper",
            Turn.Quarter => "left",
            Turn.Half => "lower",
            _ => "right",
        };

    /// <summary>Where the hoop's upper edge points on the drawing.</summary>
    internal static string Short(Turn turn) =>
        turn switch
        {
            Turn.None => "upright",
            Turn.Quarter => "turned right",
            Turn.Half => "upside down",
            _ => "turned left",
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
