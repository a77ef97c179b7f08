using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning.Order;
using Splitter.Recipes;

namespace Splitter.Planning.Marks;

/// <summary>
/// How well hoopings will meet. A hooping set by N corners misses its donor at a place r from their centroid by
/// TRE²(r) = FLE²/N · (1 + r²/(2 f²)), with f² the mean squared distance of the corners from their centroid and FLE the
/// total error of setting one corner: Fitzpatrick, West and Maurer 1998, IEEE TMI 17(5):694-702, in its 2-D form. Cloth
/// that gives adds its strain times the distance from the nearest corner, since every corner is set over its own tack. A
/// hooping that is set askew carries all that is set by it along, wherever that lies; its cloth gives only as far as it
/// sews, that is up to the corners of the next hooping. Settings are independent, so that squares add up along the chain
/// of hoopings between two parts.
/// </summary>
internal sealed class PredictedFit
{
    private readonly Sequence sequence;
    private readonly ImmutableArray<Setting?> settings;

    internal PredictedFit(Recipe recipe, Sequence sequence, ImmutableArray<Corner> corners)
    {
        this.sequence = sequence;
        settings =
        [
            .. Enumerable
                .Range(0, sequence.Order.Length)
                .Select(i => corners.Where(c => c.Receivers.Contains(i)).Select(c => c.At).ToImmutableArray())
                .Select(taken =>
                    taken.IsEmpty ? null : new Setting(taken, recipe.Registration.Accuracy, recipe.Cloth.Stretch)
                ),
        ];
    }

    /// <summary>Root mean square misfit of two parts at a place, µm.</summary>
    internal double Misfit(int one, int other, Point at)
    {
        // What the way from both to the first hooping has in common moves both alike and cancels.
        var (a, b) = (sequence.Chain(one).ToList(), sequence.Chain(other).ToList());
        return Math.Sqrt(Variance(a.Except(b), at) + Variance(b.Except(a), at));
    }

    /// <param name="chain">From the part back towards the first hooping.</param>
    private double Variance(IEnumerable<int> chain, Point at)
    {
        var (sum, end) = (0.0, at);
        foreach (var setting in chain.Select(i => settings[i]).OfType<Setting>())
        {
            sum += setting.SettingVariance(at) + setting.StretchVariance(end);
            end = setting.Centroid;
        }
        return sum;
    }

    /// <summary>One hooping set by its corners.</summary>
    internal sealed class Setting
    {
        private readonly ImmutableArray<Point> corners;
        private readonly (double X, double Y) centroid;
        private readonly double meanSquare;
        private readonly double localisation;
        private readonly Stretch stretch;

        /// <param name="accuracy">One standard deviation per axis, µm.</param>
        internal Setting(ImmutableArray<Point> corners, double accuracy, Stretch stretch)
        {
            this.corners = corners;
            centroid = (corners.Average(p => (double)p.X), corners.Average(p => (double)p.Y));
            meanSquare = corners.Average(p => Squared(p.X - centroid.X) + Squared(p.Y - centroid.Y));
            localisation = 2 * accuracy * accuracy;
            this.stretch = stretch;
        }

        /// <summary>The middle of the corners.</summary>
        internal Point Centroid => new(Units.Round(centroid.X), Units.Round(centroid.Y));

        /// <summary>Mean squared misfit to the donor at a place because corners are not set exactly, µm².</summary>
        internal double SettingVariance(Point at)
        {
            var fromMiddle = Squared(at.X - centroid.X) + Squared(at.Y - centroid.Y);
            return localisation / corners.Length * (1 + (fromMiddle / (2 * meanSquare)));
        }

        /// <summary>
        /// Mean squared misfit because cloth gives on the way from the nearest corner, µm². Warp and weft give along
        /// themselves; shear of the weave by s lengthens the bias by s and moves a place at (a, b) along warp and weft by
        /// (s b, s a).
        /// </summary>
        internal double StretchVariance(Point at)
        {
            var nearest = corners.OrderBy(c => c.DistanceTo(at)).ThenBy(c => c).First();
            var (dx, dy) = (at.X - (double)nearest.X, at.Y - (double)nearest.Y);
            var (sin, cos) = Math.SinCos(stretch.WarpDirection * Math.PI / 180);
            var (along, across) = ((dx * cos) + (dy * sin), (dy * cos) - (dx * sin));
            return Squared(stretch.Warp * along)
                + Squared(stretch.Weft * across)
                + (Squared(stretch.Bias) * (Squared(along) + Squared(across)));
        }

        private static double Squared(double value) => value * value;
    }
}
