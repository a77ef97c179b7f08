using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning.Order;
using Splitter.Recipes;

namespace Splitter.Planning.Marks;

/// <summary>
/// How well hoopings will meet. A hooping set by N corners misses its donor at a place r from their centroid by
/// TRE²(r) = FLE²/N · (1 + r²/(2 f²)), with f² the mean squared distance of the corners from their centroid and FLE the
/// total error of setting one corner: Fitzpatrick, West and Maurer 1998, IEEE TMI 17(5):694-702, in its 2-D form. Cloth
/// that gives adds its strain times the distance from the centroid. Settings are independent, so that squares add up
/// along the chain of hoopings between two parts.
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
        var (a, b) = (sequence.Chain(one).ToHashSet(), sequence.Chain(other).ToHashSet());
        a.SymmetricExceptWith(b);
        return Math.Sqrt(a.Order().Sum(i => settings[i]?.Variance(at) ?? 0));
    }

    /// <summary>One hooping set by its corners.</summary>
    internal sealed class Setting
    {
        private readonly (double X, double Y) centroid;
        private readonly int count;
        private readonly double meanSquare;
        private readonly double localisation;
        private readonly Stretch stretch;

        /// <param name="accuracy">One standard deviation per axis, µm.</param>
        internal Setting(ImmutableArray<Point> corners, double accuracy, Stretch stretch)
        {
            count = corners.Length;
            centroid = (corners.Average(p => (double)p.X), corners.Average(p => (double)p.Y));
            meanSquare = corners.Average(p => Squared(p.X - centroid.X) + Squared(p.Y - centroid.Y));
            localisation = 2 * accuracy * accuracy;
            this.stretch = stretch;
        }

        /// <summary>Mean squared misfit to the donor at a place, µm².</summary>
        internal double Variance(Point at)
        {
            var (dx, dy) = (at.X - centroid.X, at.Y - centroid.Y);
            var setting = localisation / count * (1 + ((Squared(dx) + Squared(dy)) / (2 * meanSquare)));
            return setting + Strain(dx, dy);
        }

        /// <summary>
        /// Warp and weft give along themselves; shear of the weave by s lengthens the bias by s and moves a place at
        /// (a, b) along warp and weft by (s b, s a).
        /// </summary>
        private double Strain(double dx, double dy)
        {
            var (sin, cos) = Math.SinCos(stretch.WarpDirection * Math.PI / 180);
            var (along, across) = ((dx * cos) + (dy * sin), (dy * cos) - (dx * sin));
            return Squared(stretch.Warp * along)
                + Squared(stretch.Weft * across)
                + (Squared(stretch.Bias) * (Squared(along) + Squared(across)));
        }

        private static double Squared(double value) => value * value;
    }
}
