using Splitter.Geometry;

namespace Splitter.Parts;

/// <summary>Where a jump begins or ends, µm, as a search computes with it some ten million times.</summary>
internal readonly record struct JumpEnd(double X, double Y)
{
    /// <summary>
    /// A move longer than this, µm, shows as a loose thread and is trimmed; a shorter one lies flat. Common practice,
    /// no source.
    /// </summary>
    internal const int LongestUntrimmed = 2 * Units.Millimetre;

    /// <summary>
    /// Jumps may get longer by this to save a trim, µm: a trim takes as long as a hundred stitches and leaves two ends.
    /// Common practice, no source.
    /// </summary>
    private const double TrimWorth = 50 * Units.Millimetre;

    /// <summary>Before the first block when the needle comes from nowhere, and after the last one.</summary>
    internal static readonly JumpEnd Nowhere = new(double.NaN, double.NaN);

    /// <summary>So much more than what a jump is asked to cost rounds away no doubt, µm.</summary>
    private const double Doubtless = 1;

    internal static JumpEnd At(Point? point) => point is { } at ? new(at.X, at.Y) : Nowhere;

    /// <summary>What a jump costs, µm; nothing from or to nowhere.</summary>
    internal static double Cost(JumpEnd from, JumpEnd to)
    {
        var (x, y) = (from.X - to.X, from.Y - to.Y);
        var length = Math.Sqrt((x * x) + (y * y));
        return length > LongestUntrimmed ? length + TrimWorth
            : length >= 0 ? length
            : 0;
    }

    /// <summary>
    /// Surely costs so much or more: seen by squares alone, since most of what a search asks is far off. Not said of
    /// every jump that does.
    /// </summary>
    internal static bool IsDear(JumpEnd from, JumpEnd to, double cost)
    {
        var (x, y) = (from.X - to.X, from.Y - to.Y);
        var length = Math.Max(LongestUntrimmed, cost - TrimWorth) + Doubtless;
        return (x * x) + (y * y) > length * length;
    }
}
