using Splitter.Geometry;

namespace Splitter.Recipes;

/// <summary>How a hooping finds the last one.</summary>
internal sealed record RegistrationRules
{
    /// <summary>How closely a corner is set over a tack: one standard deviation per axis.</summary>
    public int Accuracy { get; init; } = 300;

    /// <summary>
    /// How closely an offset is read at an alignment cross: one standard deviation per axis. To the nearest half
    /// millimetre of a ruler it is 0.5 mm / sqrt 12.
    /// </summary>
    public int Reading { get; init; } = 150;

    /// <summary>
    /// A part may be stretched by so much along and across the grain to follow cloth that has; 0 for not at all.
    /// </summary>
    public double FollowStretch { get; init; }

    /// <summary>
    /// No recipe asks for more corners than this: each is a tack to set and to take out at every hooping.
    /// </summary>
    internal const int MostCorners = 6;

    /// <summary>How many corners a hooping takes where there is room; at least two.</summary>
    public int CornerCount { get; init; } = 3;

    /// <summary>The recipe says how many: then also one that gives hardly anything is sewn.</summary>
    public bool IsCountAsked { get; init; }

    /// <summary>Length of a corner's arm.</summary>
    public int CornerArm { get; init; } = 8 * Units.Millimetre;

    /// <summary>Alignment stitches are sewn.</summary>
    public bool Alignment { get; init; } = true;
}
