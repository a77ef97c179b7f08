using static System.FormattableString;

namespace Splitter.Correcting;

/// <summary>Moves and stretches in words, as the hoop lies before the person; figures of nought are left out.</summary>
internal static class MoveWords
{
    /// <summary>What rounds to nought in the two decimals that are told, µm.</summary>
    private const double LeastLength = 5;

    /// <summary>The same of a share, which is told in hundredths of a percent.</summary>
    private const double LeastShare = 0.00005;

    /// <summary><c>0.60 mm right and 0.20 mm down</c>.</summary>
    internal static string Of(int right, int up)
    {
        var ways = new[]
        {
            (Length: right, Way: right < 0 ? "left" : "right"),
            (Length: up, Way: up < 0 ? "down" : "up"),
        }
            .Where(w => Math.Abs(w.Length) >= LeastLength)
            .Select(w => Invariant($"{Math.Abs(w.Length) / 1000.0:0.00} mm {w.Way}"));
        return string.Join(" and ", ways) is { Length: > 0 } told ? told : "0.00 mm";
    }

    /// <summary>What cloth has done that a part has to follow so: <c>stretched</c>.</summary>
    internal static string Given(double warp, double weft) =>
        (Told(warp), Told(weft)) switch
        {
            (>= 0, >= 0) => "stretched",
            (<= 0, <= 0) => "drawn in",
            _ => "gone out of shape",
        };

    /// <summary><c>1.05 % shorter along the weft</c>; empty where nothing is told.</summary>
    internal static string Shares(double warp, double weft) =>
        string.Join(
            " and ",
            new[] { (Share: warp, Way: "warp"), (Share: weft, Way: "weft") }
                .Where(s => Told(s.Share) != 0)
                .Select(s =>
                    Invariant($"{Math.Abs(s.Share) * 100:0.00} % {(s.Share < 0 ? "shorter" : "longer")} ")
                    + $"along the {s.Way}"
                )
        );

    private static double Told(double share) => Math.Abs(share) < LeastShare ? 0 : share;
}
