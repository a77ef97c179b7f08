using Splitter.Geometry;

namespace Splitter.Recipes;

/// <summary>How a hooping finds the last one.</summary>
internal sealed record RegistrationRules
{
    /// <summary>How closely a corner is set over a tack: one standard deviation per axis.</summary>
    public int Accuracy { get; init; } = 300;

    /// <summary>No recipe asks for more corners than this: each is a tack to set and to take out at every hooping.</summary>
    internal const int MostCorners = 6;

    /// <summary>How many corners a hooping takes where there is room; at least two.</summary>
    public int CornerCount { get; init; } = 3;

    /// <summary>Length of a corner's arm.</summary>
    public int CornerArm { get; init; } = 8 * Units.Millimetre;

    /// <summary>Alignment stitches are sewn.</summary>
    public bool Alignment { get; init; } = true;
}
