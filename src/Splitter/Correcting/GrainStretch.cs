using Splitter.Geometry;

namespace Splitter.Correcting;

/// <summary>A stretch along the cloth's warp and weft.</summary>
/// <param name="WarpDirection">Degrees clockwise from x.</param>
/// <param name="Warp">Share by which the part becomes longer along the warp; negative if shorter.</param>
/// <param name="Weft">Along the weft.</param>
/// <param name="About">The place that stays, µm.</param>
internal sealed record GrainStretch(double WarpDirection, double Warp, double Weft, Vector About)
{
    internal static readonly GrainStretch None = new(0, 0, 0, default);

    /// <summary>As for every direction: machines differ in the last of sixteen decimals.</summary>
    private const int Decimals = 9;

    private readonly Vector warp = new(
        Math.Round(Math.Cos(WarpDirection * Math.PI / 180), Decimals),
        Math.Round(Math.Sin(WarpDirection * Math.PI / 180), Decimals)
    );

    /// <summary>The larger of both, either way.</summary>
    internal double Most => Math.Max(Math.Abs(Warp), Math.Abs(Weft));

    /// <summary>The part of a way that lies along the warp.</summary>
    internal Vector AlongWarp(Vector way) => warp * Vector.Dot(way, warp);

    /// <summary>The part of a way that lies along the weft.</summary>
    internal Vector AlongWeft(Vector way) => way - AlongWarp(way);

    /// <summary>Where a place comes to lie.</summary>
    internal Vector Of(Vector place) => place + (AlongWarp(place - About) * Warp) + (AlongWeft(place - About) * Weft);
}
