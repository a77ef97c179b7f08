using System.Collections.Immutable;

namespace Splitter.Benchmarks.Least;

/// <summary>
/// Lengths by how often a line crosses links between places of a lattice (Cauchy and Crofton; Boykov and Kolmogorov 2003,
/// ICCV, 26-33), in sixteen directions.
/// </summary>
internal static class Crofton
{
    private static readonly ImmutableArray<(int X, int Y)> Ways =
    [
        (1, 0),
        (2, 1),
        (1, 1),
        (1, 2),
        (0, 1),
        (-1, 2),
        (-1, 1),
        (-2, 1),
    ];

    /// <summary>Directions that are looked at for the one that counts for most.</summary>
    private const int Directions = 3600;

    /// <summary>
    /// The links of a place and what each counts for, in steps: made smaller by the share (1.3 %) by which some direction
    /// would count for more than its length.
    /// </summary>
    internal static ImmutableArray<(int X, int Y, double Weight)> Links { get; } = Scaled();

    private static ImmutableArray<(int X, int Y, double Weight)> Scaled()
    {
        var links = Ways.Select(
                (way, k) =>
                    (
                        way.X,
                        way.Y,
                        Weight: (Angle(k + 1) - Angle(k - 1)) / 4 / Math.Sqrt((way.X * way.X) + (way.Y * way.Y))
                    )
            )
            .ToArray();
        var most = Enumerable
            .Range(0, Directions)
            .Select(d => Math.SinCos(Math.PI * d / Directions))
            .Max(line => links.Sum(l => l.Weight * Math.Abs((l.X * line.Sin) - (l.Y * line.Cos))));
        return [.. links.Select(l => (l.X, l.Y, l.Weight / most))];

        // Half a turn further the same ways come again.
        double Angle(int k)
        {
            var (turns, way) = Math.DivRem(k + Ways.Length, Ways.Length);
            return Math.Atan2(Ways[way].Y, Ways[way].X) + ((turns - 1) * Math.PI);
        }
    }
}
