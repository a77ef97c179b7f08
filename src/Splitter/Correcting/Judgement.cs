using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning.Fit;
using Splitter.Recipes;

namespace Splitter.Correcting;

/// <summary>
/// What offsets at some places say. Whether they can be chance is tested against their own covariance: readings err,
/// donors have errors of their own, and cloth gives as the recipe has it. Each test is a sum of squares in standard
/// deviations, which has a chi-square distribution.
/// </summary>
/// <param name="Move">
/// Of the part as it was to be sewn, onto what it should meet; after the stretch, if there is one.
/// </param>
/// <param name="Stretch">
/// How the cloth has stretched along its warp and weft; nothing unless the verdict says so.
/// </param>
/// <param name="Residual">Root mean square of what the move leaves at the measured places, µm.</param>
internal sealed record Judgement(Verdict Verdict, RigidMove Move, GrainStretch Stretch, double Residual)
{
    /// <summary>
    /// Places nearer than this along warp or weft, µm, tell nothing of its stretch: half a millimetre read wrongly is
    /// as much over this way as cloth gives.
    /// </summary>
    private const double Apart = 30.0 * Units.Millimetre;

    internal static Judgement Of(Recipe recipe, PredictedFit fit, int hooping, ImmutableArray<Sighting> seen)
    {
        ImmutableArray<Vector> at = [.. seen.Select(s => new Vector(s.At.X, s.At.Y))];
        double[] offsets = [.. seen.SelectMany(s => new[] { s.Offset.X, s.Offset.Y })];
        var spread = fit.SpreadOfOffsets(hooping, [.. seen.Select(s => s.Taken)]);
        var move = RigidMove.Best(at, [.. seen.Select((s, i) => at[i] - s.Offset)]);
        var residual = Left(seen, move, GrainStretch.None);
        // What moves it must explain, and what is left of the offsets after each.
        var about = move.About;
        double[][] rigid =
        [
            Column(at, _ => new(1, 0)),
            Column(at, _ => new(0, 1)),
            Column(at, p => new(about.Y - p.Y, p.X - about.X)),
        ];
        if (!IsChance(new LinearFit(offsets.Length, rigid), offsets, spread))
            return Strained(recipe, at, offsets, spread, rigid, seen);
        var verdict =
            IsChance(new LinearFit(offsets.Length), offsets, spread) ? Verdict.Fits
            : IsChance(new LinearFit(offsets.Length, rigid[..2]), offsets, spread) ? Verdict.Moved
            : Verdict.Turned;
        return new(verdict, move, GrainStretch.None, residual);
    }

    /// <summary>
    /// Three places or more tell stretch along the warp from stretch along the weft, two only how much further apart
    /// they are; so both are then taken to be alike.
    /// </summary>
    private static Judgement Strained(
        Recipe recipe,
        ImmutableArray<Vector> at,
        double[] offsets,
        double[,] spread,
        double[][] rigid,
        ImmutableArray<Sighting> seen
    )
    {
        var grain = new GrainStretch(recipe.Cloth.Stretch.WarpDirection, 0, 0, at[0]);
        double[][] strains =
            at.Length == 2
                ? [Column(at, p => p - at[0])]
                : [Strain(at, p => grain.AlongWarp(p - at[0])), Strain(at, p => grain.AlongWeft(p - at[0]))];
        var model = new LinearFit(offsets.Length, [.. rigid, .. strains]);
        var found = model.Coefficients(offsets);
        // What came out too far apart has to come nearer.
        var stretch = grain with
        {
            Warp = -found[rigid.Length],
            Weft = -found[^1],
        };
        ImmutableArray<Vector> stretched = [.. at.Select(stretch.Of)];
        var move = RigidMove.Best(stretched, [.. seen.Select((s, i) => at[i] - s.Offset)]);
        var verdict = model.Left == 0 || IsChance(model, offsets, spread) ? Verdict.Stretched : Verdict.Contradictory;
        return new(verdict, move, stretch, Left(seen, move, stretch));
    }

    private static bool IsChance(LinearFit fit, double[] offsets, double[,] spread) =>
        fit.Unexplained(offsets, spread) <= ChiSquare.Limit(fit.Left);

    private static double[] Column(ImmutableArray<Vector> at, Func<Vector, Vector> move) =>
        [.. at.Select(move).SelectMany(m => new[] { m.X, m.Y })];

    /// <summary>Nothing, where the places do not lie far enough apart.</summary>
    private static double[] Strain(ImmutableArray<Vector> at, Func<Vector, Vector> move)
    {
        var ways = at.Select(move).ToList();
        return ways.Exists(a => ways.Exists(b => (a - b).Length >= Apart))
            ? Column(at, move)
            : new double[2 * at.Length];
    }

    private static double Left(ImmutableArray<Sighting> seen, RigidMove move, GrainStretch stretch) =>
        Math.Sqrt(
            seen.Average(s =>
            {
                var at = new Vector(s.At.X, s.At.Y);
                var left = move.Of(stretch.Of(at)) - (at - s.Offset);
                return Vector.Dot(left, left);
            })
        );
}
