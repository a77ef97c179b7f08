using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning.Fit;
using Splitter.Recipes;

namespace Splitter.Correcting;

/// <summary>
/// What offsets at some places say. Whether a move explains them is tested against their own covariance: readings err,
/// donors have errors of their own, and cloth gives as the recipe has it. Whether there is anything to move is tested
/// against reading and the tape's grid alone: a donor's error is in the cloth already, and the part can still follow
/// it. Each test is a sum of squares in standard deviations, which has a chi-square distribution.
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

    /// <summary>What following a stretch adds to errors; null where none is followed.</summary>
    internal FollowedSpread? Followed { get; private init; }

    internal static Judgement Of(Recipe recipe, PredictedFit fit, int hooping, ImmutableArray<Sighting> seen)
    {
        double[] offsets = [.. seen.SelectMany(s => s.Seen(s.Offset))];
        var spread = AsSeen(fit.SpreadOfOffsets(hooping, [.. seen.Select(s => s.Taken)]), seen);
        var move = MeasuredMove.Best(seen, GrainStretch.None);
        // What moves it must explain, and what is left of the offsets after each.
        var about = move.About;
        Func<Vector, Vector>[] moves = [_ => new(1, 0), _ => new(0, 1), p => new(about.Y - p.Y, p.X - about.X)];
        double[][] rigid = [.. moves.Select(m => Column(seen, m))];
        if (!IsChance(new LinearFit(offsets.Length, rigid), offsets, spread))
            return Strained(recipe, offsets, spread, moves, seen);
        var verdict =
            IsChance(new LinearFit(offsets.Length), offsets, AsSeen(fit.SpreadOfReading(seen.Length), seen))
                ? Verdict.Fits
            : IsChance(new LinearFit(offsets.Length, rigid[..2]), offsets, spread) ? Verdict.Moved
            : Verdict.Turned;
        return new(verdict, move, GrainStretch.None, MeasuredMove.Left(seen, move, GrainStretch.None));
    }

    /// <summary>Where a place of the part comes to lie.</summary>
    internal Vector Lays(Point at) => Move.Of(Stretch.Of(new Vector(at.X, at.Y)));

    /// <summary>The same on the tape's grid, where the needle can go in.</summary>
    internal Point OnTape(Point at) => Lays(at).From(default).OnTape();

    /// <summary>
    /// Stretch along the warp, along the weft, or both: of what explains the figures the least that does. Two places
    /// tell only how far apart they are, which is taken as stretch along the axis that lies nearest to the way between
    /// them: cloth that is pulled along draws in across. Two places and an edge have nothing left to test both by.
    /// </summary>
    private static Judgement Strained(
        Recipe recipe,
        double[] offsets,
        double[,] spread,
        Func<Vector, Vector>[] moves,
        ImmutableArray<Sighting> seen
    )
    {
        double[][] rigid = [.. moves.Select(m => Column(seen, m))];
        var origin = new Vector(seen[0].At.X, seen[0].At.Y);
        var grain = new GrainStretch(recipe.Cloth.Stretch.WarpDirection, 0, 0, origin);
        var warp = Strain(seen, p => grain.AlongWarp(p - origin));
        var weft = Strain(seen, p => grain.AlongWeft(p - origin));
        var none = new double[offsets.Length];
        var (alongWarp, alongWeft) = (Model(warp, none), Model(none, weft));
        var model =
            seen.Length == 2
                ? (IsAlongWarp(seen, grain) ? alongWarp : alongWeft)
                : new[] { alongWarp, alongWeft }
                    .Where(alone => Explains(alone, offsets, spread))
                    .MinBy(alone => alone.Unexplained(offsets, spread))
                    ?? Model(warp, weft);
        var isTold = seen.Length == 2 && model.Left == 0;
        var found = isTold || model.Left > 0 ? model.Coefficients(offsets) : new double[rigid.Length + 2];
        // What came out too far apart has to come nearer.
        var stretch = grain with
        {
            Warp = -found[rigid.Length],
            Weft = -found[^1],
        };
        var move = MeasuredMove.Best(seen, stretch);
        var isStretched = isTold || (model.Left > 0 && IsChance(model, offsets, spread));
        return new(
            isStretched ? Verdict.Stretched : Verdict.Contradictory,
            move,
            stretch,
            MeasuredMove.Left(seen, move, stretch)
        )
        {
            Followed = new(
                [.. moves, p => grain.AlongWarp(p - origin), p => grain.AlongWeft(p - origin)],
                new LinearFit(offsets.Length, rigid),
                model,
                spread
            ),
        };

        LinearFit Model(params double[][] strains) => new(offsets.Length, [.. rigid, .. strains]);

        // Where the other one has more to say than chance, it is followed, too.
        bool Explains(LinearFit alone, double[] values, double[,] covariance) =>
            alone.Left > 0
            && IsChance(alone, values, covariance)
            && alone.Unexplained(values, covariance) - Model(warp, weft).Unexplained(values, covariance)
                <= ChiSquare.Limit(1);
    }

    private static bool IsAlongWarp(ImmutableArray<Sighting> two, GrainStretch grain)
    {
        var way = Vector.Between(two[0].At, two[1].At);
        return grain.AlongWarp(way).Length >= grain.AlongWeft(way).Length;
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
