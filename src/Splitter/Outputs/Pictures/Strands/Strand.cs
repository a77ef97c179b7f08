using Splitter.Stitching.Density;

namespace Splitter.Outputs.Pictures.Strands;

/// <summary>The form of a thread between two needle holes; lengths in µm.</summary>
internal static class Strand
{
    /// <summary>
    /// As wide as it is drawn: a little more than <see cref="ThreadGrid.ThreadWidth"/>, since a thread that lies
    /// beside another spreads towards it, and no hair of what is below shows between them.
    /// </summary>
    internal const int Width = 440;

    /// <summary>The part of the width that the light reaches.</summary>
    internal const int BodyWidth = 300;

    /// <summary>The part of it that throws light back.</summary>
    internal const int RidgeWidth = 120;

    /// <summary>How far the ridge lies towards light from the side.</summary>
    internal const int RidgeShift = 70;

    /// <summary>From a hole to where the thread lies full in the light, and at most this share of a stitch.</summary>
    internal const int Dip = 350;

    internal const double MostDip = 0.3;

    /// <summary>How far its shadow reaches on what it lies on, away from the light.</summary>
    internal const int ShadowReach = 130;

    /// <summary>How much darker, percent.</summary>
    internal const int Shadow = 22;
}
