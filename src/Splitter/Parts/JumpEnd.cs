using System.Runtime.CompilerServices;
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

    /// <summary>What is longer by this is so whatever sums are rounded to, µm.</summary>
    private const double Doubtless = 1;

    private const double SurelyTrimmed = LongestUntrimmed + Doubtless;

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
    /// Two jumps are trimmed and surely cost so much together, or more: seen by squares alone, since most of what a
    /// search asks about is far off.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static bool AreDear(JumpEnd from, JumpEnd to, JumpEnd from2, JumpEnd to2, double cost)
    {
        var (x, y, x2, y2) = (from.X - to.X, from.Y - to.Y, from2.X - to2.X, from2.Y - to2.Y);
        var (one, two) = ((x * x) + (y * y), (x2 * x2) + (y2 * y2));
        var longer = Math.Max(LongestUntrimmed, cost - (2 * TrimWorth)) + Doubtless;
        return Math.Max(one, two) > longer * longer && Math.Min(one, two) > SurelyTrimmed * SurelyTrimmed;
    }
}
