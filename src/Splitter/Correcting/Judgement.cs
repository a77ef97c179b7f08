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
        double[] offsets = [.. seen.SelectMany(s => s.Seen(s.Offset))];
        var spread = AsSeen(fit.SpreadOfOffsets(hooping, [.. seen.Select(s => s.Taken)]), seen);
        var move = MeasuredMove.Best(seen, GrainStretch.None);
        // What moves it must explain, and what is left of the offsets after each.
        var about = move.About;
        double[][] rigid =
        [
            Column(seen, _ => new(1, 0)),
            Column(seen, _ => new(0, 1)),
            Column(seen, p => new(about.Y - p.Y, p.X - about.X)),
        ];
        if (!IsChance(new LinearFit(offsets.Length, rigid), offsets, spread))
            return Strained(recipe, offsets, spread, rigid, seen);
        var verdict =
            IsChance(new LinearFit(offsets.Length), offsets, spread) ? Verdict.Fits
            : IsChance(new LinearFit(offsets.Length, rigid[..2]), offsets, spread) ? Verdict.Moved
            : Verdict.Turned;
        return new(verdict, move, GrainStretch.None, MeasuredMove.Left(seen, move, GrainStretch.None));
    }

    /// <summary>Where a place of the part comes to lie.</summary>
    internal Vector Lays(Point at) => Move.Of(Stretch.Of(new Vector(at.X, at.Y)));

    /// <summary>The same on the tape's grid, where the needle can go in.</summary>
    internal Point OnTape(Point at) => Lays(at).From(default).OnTape();

    /// <summary>
    /// Three places or more tell stretch along the warp from stretch along the weft, two only how much further apart
    /// they are; so both are then taken to be alike.
    /// </summary>
    private static Judgement Strained(
        Recipe recipe,
        double[] offsets,
        double[,] spread,
        double[][] rigid,
        ImmutableArray<Sighting> seen
    )
    {
        var origin = new Vector(seen[0].At.X, seen[0].At.Y);
        var grain = new GrainStretch(recipe.Cloth.Stretch.WarpDirection, 0, 0, origin);
        double[][] strains =
            seen.Length == 2
                ? [Column(seen, p => p - origin)]
                : [Strain(seen, p => grain.AlongWarp(p - origin)), Strain(seen, p => grain.AlongWeft(p - origin))];
        var model = new LinearFit(offsets.Length, [.. rigid, .. strains]);
        var found = model.Coefficients(offsets);
        // What came out too far apart has to come nearer.
        var stretch = grain with
        {
            Warp = -found[rigid.Length],
            Weft = -found[^1],
        };
        var move = MeasuredMove.Best(seen, stretch);
        var verdict = model.Left == 0 || IsChance(model, offsets, spread) ? Verdict.Stretched : Verdict.Contradictory;
        return new(verdict, move, stretch, MeasuredMove.Left(seen, move, stretch));
    }

    private static bool IsChance(LinearFit fit, double[] offsets, double[,] spread) =>
        fit.Unexplained(offsets, spread) <= ChiSquare.Limit(fit.Left);

    private static double[] Column(ImmutableArray<Sighting> seen, Func<Vector, Vector> move) =>
        [.. seen.SelectMany(s => s.Seen(move(new(s.At.X, s.At.Y))))];

    /// <summary>Nothing, where the places do not lie far enough apart.</summary>
    private static double[] Strain(ImmutableArray<Sighting> seen, Func<Vector, Vector> move)
    {
        var ways = seen.Select(s => move(new(s.At.X, s.At.Y))).ToList();
        var column = Column(seen, move);
        return ways.Exists(a => ways.Exists(b => (a - b).Length >= Apart)) ? column : new double[column.Length];
    }

    /// <summary>Of the covariance of both components at each place that of what is seen there.</summary>
    private static double[,] AsSeen(double[,] spread, ImmutableArray<Sighting> seen)
    {
        (int Place, Vector Way)[] ways =
        [
            .. seen.SelectMany(
                (s, i) => s.Across is { } across ? [(i, across)] : new[] { (i, new Vector(1, 0)), (i, new(0, 1)) }
            ),
        ];
        var among = new double[ways.Length, ways.Length];
        for (var a = 0; a < ways.Length; a++)
        for (var b = 0; b < ways.Length; b++)
        {
            var (i, j, p, q) = (2 * ways[a].Place, 2 * ways[b].Place, ways[a].Way, ways[b].Way);
            among[a, b] =
                (p.X * ((spread[i, j] * q.X) + (spread[i, j + 1] * q.Y)))
                + (p.Y * ((spread[i + 1, j] * q.X) + (spread[i + 1, j + 1] * q.Y)));
        }
        return among;
    }
}
