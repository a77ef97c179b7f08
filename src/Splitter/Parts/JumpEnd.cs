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
    /// Two jumps surely cost so much together, or more: seen by squares alone, since most of what a search asks about
    /// is far off. Not said of all that do.
    /// </summary>
    internal static bool AreDear(JumpEnd from, JumpEnd to, JumpEnd from2, JumpEnd to2, double cost)
    {
        var (one, two) = (Squared(from, to), Squared(from2, to2));
        var (less, more) = (Math.Min(one, two), Math.Max(one, two));
        // With one trim, or with two.
        return more > Beyond(cost - TrimWorth) || (less > Beyond(0) && more > Beyond(cost - (2 * TrimWorth)));

        static double Squared(JumpEnd from, JumpEnd to) =>
            ((from.X - to.X) * (from.X - to.X)) + ((from.Y - to.Y) * (from.Y - to.Y));

        // A jump whose square is more is trimmed, and longer than this.
        static double Beyond(double length) =>
            (Math.Max(LongestUntrimmed, length) + Doubtless) * (Math.Max(LongestUntrimmed, length) + Doubtless);
    }
}
