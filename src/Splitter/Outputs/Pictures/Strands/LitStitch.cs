using Splitter.Geometry;

namespace Splitter.Outputs.Pictures.Strands;

/// <summary>A stitch as the light falls on it, its length in µm.</summary>
internal readonly record struct LitStitch(double Length, ThreadLight Light)
{
    internal static LitStitch Of(Point from, Point to)
    {
        var length = from.DistanceTo(to);
        return new(length, ThreadLight.Of(from, to, length));
    }

    /// <summary>The light on stitches one after the other: the mean along their thread.</summary>
    internal static ThreadLight Mean(ReadOnlySpan<LitStitch> sewn)
    {
        var (sum, length) = (0.0, 0.0);
        foreach (var stitch in sewn)
            (sum, length) = (sum + (stitch.Length * stitch.Light.Step), length + stitch.Length);
        return new(length > 0 ? Units.Round(sum / length) : ThreadLight.Steps);
    }
}
