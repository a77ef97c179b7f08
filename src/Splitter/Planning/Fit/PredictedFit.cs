using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Planning.Fit;

/// <summary>
/// How well hoopings will meet, from the corners that they are set by (<see cref="Poses"/>) and the grid of the tape.
/// </summary>
internal sealed class PredictedFit
{
    /// <summary>
    /// Stitches whose places a join rounds to the tape: one on each side of it. Corners lie on the grid themselves, in every
    /// part alike, and round nothing.
    /// </summary>
    private const int Roundings = 2;

    /// <summary>
    /// Mean square of one rounding in x and y, µm²: an error spread evenly over a step has a variance of step²/12 per axis.
    /// </summary>
    private const double OfRounding = 2 * (double)Units.TapeStep * Units.TapeStep / 12;

    private readonly Poses poses;

    internal PredictedFit(Recipe recipe, int hoopings, ImmutableArray<Corner> corners)
    {
        var origin = corners.IsEmpty ? default : corners[0].At;
        poses = new(hoopings, recipe.Registration.Accuracy, recipe.Cloth.Stretch, origin);
        poses.AddFirst();
        for (var i = 1; i < hoopings; i++)
            poses.Add([.. corners.Where(c => c.Receivers.Contains(i)).Select(c => new TakenCorner(c.At, c.Donor))]);
    }

    /// <summary>What makes two parts miss each other at a place.</summary>
    internal ErrorBudget Budget(int one, int other, Point at)
    {
        var misfit = poses.Covariance(one, other, at);
        return new(
            Math.Sqrt(misfit.Setting),
            Math.Sqrt(Roundings * OfRounding),
            Math.Sqrt(misfit.Warp),
            Math.Sqrt(misfit.Weft),
            Math.Sqrt(misfit.Bias)
        );
    }

    /// <summary>
    /// The distance, µm, that the misfit of two parts at a place exceeds once in twenty times. The misfit is taken as
    /// normal with the covariance that it really has: near the turning point of one hooping it is round, far along a seam
    /// it is long and thin, and then larger misfits are more frequent than the Rayleigh distribution has them.
    /// </summary>
    internal double Within95(int one, int other, Point at)
    {
        var misfit = poses.Covariance(one, other, at);
        var round = Roundings * OfRounding / 2;
        return NormalSpread.Within95(misfit.XX + round, misfit.YY + round, misfit.XY);
    }
}
