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
    /// Stitches whose places a join rounds to the tape: one on each side of it. Corners lie on the grid themselves, in
    /// every part alike, and round nothing.
    /// </summary>
    private const int Roundings = 2;

    /// <summary>Variance of one rounding, µm² per axis: an error spread evenly over a step has step²/12.</summary>
    private const double OfRounding = (double)Units.TapeStep * Units.TapeStep / 12;

    private readonly Poses poses;

    /// <summary>How closely an offset is read: one standard deviation per axis, µm.</summary>
    private readonly double reading;

    private readonly Correction? correction;

    /// <summary>A hooping that has been moved to fit what was measured at places of it.</summary>
    /// <param name="Besides">
    /// Covariance, µm², of where it lays a place, beyond that of a rigid move; null for none.
    /// </param>
    internal sealed record Correction(
        int Hooping,
        ImmutableArray<TakenCorner> Measured,
        Func<Point, (double XX, double XY, double YY)>? Besides = null
    );

    /// <param name="correction">Null for none.</param>
    internal PredictedFit(Recipe recipe, int hoopings, ImmutableArray<Corner> corners, Correction? correction = null)
    {
        this.correction = correction;
        reading = recipe.Registration.Reading;
        var origin = corners.IsEmpty ? default : corners[0].At;
        poses = new(hoopings, recipe.Registration.Accuracy, recipe.Cloth.Stretch, origin);
        poses.AddFirst();
        for (var i = 1; i < hoopings; i++)
        {
            poses.Add([.. corners.Where(c => c.Receivers.Contains(i)).Select(c => new TakenCorner(c.At, c.Donor))]);
            if (i == correction?.Hooping)
                poses.Correct(correction.Measured.AsSpan(), reading);
        }
    }

    /// <summary>
    /// Covariance, µm², of what is read at places of a hooping, x and y in turn, apart from how its corners were set:
    /// the donors' own errors, cloth that gives, the grid of the donors' tapes, and reading itself.
    /// </summary>
    internal double[,] SpreadOfOffsets(int hooping, ImmutableArray<TakenCorner> places)
    {
        ImmutableArray<Moves> offsets =
        [
            .. places.Select(p =>
                poses.MovesAt(hooping, p.At).From(poses.MovesAt(p.Donor, p.At)).Without(hooping, Poses.OfSetting)
            ),
        ];
        var spread = new double[2 * places.Length, 2 * places.Length];
        for (var i = 0; i < places.Length; i++)
        for (var j = 0; j < places.Length; j++)
        {
            var (xx, xy, yx, yy) = offsets[i].With(offsets[j]);
            var own = i == j ? OfReading : 0;
            (spread[2 * i, 2 * j], spread[2 * i, (2 * j) + 1]) = (xx + own, xy);
            (spread[(2 * i) + 1, 2 * j], spread[(2 * i) + 1, (2 * j) + 1]) = (yx, yy + own);
        }
        return spread;
    }

    /// <summary>
    /// As <see cref="SpreadOfOffsets"/>, of what reading and the grid of the donors' tapes alone leave of offsets that
    /// are none.
    /// </summary>
    internal double[,] SpreadOfReading(int places)
    {
        var spread = new double[2 * places, 2 * places];
        for (var i = 0; i < 2 * places; i++)
            spread[i, i] = OfReading;
        return spread;
    }

    private double OfReading => (reading * reading) + OfRounding;

    /// <summary>What makes two parts miss each other at a place.</summary>
    internal ErrorBudget Budget(int one, int other, Point at)
    {
        var misfit = Misfit(one, other, at);
        var (besidesX, _, besidesY) = Besides(one, other, at);
        return new(
            Math.Sqrt(Enumerable.Range(0, Poses.OfSetting).Sum(misfit.Square) + besidesX + besidesY),
            Math.Sqrt(2 * Roundings * OfRounding),
            Math.Sqrt(misfit.Square(Poses.OfSetting)),
            Math.Sqrt(misfit.Square(Poses.OfSetting + 1)),
            Math.Sqrt(misfit.Square(Poses.OfSetting + 2))
        );
    }

    /// <summary>
    /// The distance, µm, that the misfit of two parts at a place exceeds once in twenty times. The misfit is taken as
    /// normal with the covariance that it really has: near the turning point of one hooping it is round, far along a
    /// seam it is long and thin, and then larger misfits are more frequent than the Rayleigh distribution has them.
    /// </summary>
    internal double Within95(int one, int other, Point at)
    {
        var misfit = Misfit(one, other, at);
        var (xx, xy, _, yy) = misfit.With(misfit);
        var besides = Besides(one, other, at);
        const double Round = Roundings * OfRounding;
        return NormalSpread.Within95(xx + besides.XX + Round, yy + besides.YY + Round, xy + besides.XY);
    }

    /// <summary>
    /// The diameter, µm, that the smallest circle around the places at which three parts or more come out exceeds once
    /// in twenty times. What their misfits have in common counts: hoopings that are set by each other err alike.
    /// </summary>
    internal double Circle95(ImmutableArray<int> parts, Point at)
    {
        var first = poses.MovesAt(parts[0], at);
        ImmutableArray<Moves> away = [.. parts.Skip(1).Select(part => poses.MovesAt(part, at).From(first))];
        var spread = new double[2 * away.Length, 2 * away.Length];
        for (var i = 0; i < away.Length; i++)
        for (var j = 0; j < away.Length; j++)
        {
            var (xx, xy, yx, yy) = away[i].With(away[j]);
            // The rounding of the first part is in all of them.
            var round = i == j ? Roundings * OfRounding : OfRounding;
            var besides = i == j || parts[0] == correction?.Hooping ? Besides(parts[0], parts[i + 1], at) : default;
            (spread[2 * i, 2 * j], spread[2 * i, (2 * j) + 1]) = (xx + besides.XX + round, xy + besides.XY);
            (spread[(2 * i) + 1, 2 * j], spread[(2 * i) + 1, (2 * j) + 1]) = (yx + besides.XY, yy + besides.YY + round);
        }
        return CircleSpread.Within95(spread);
    }

    private (double XX, double XY, double YY) Besides(int one, int other, Point at) =>
        correction?.Besides is { } besides && (one == correction.Hooping || other == correction.Hooping)
            ? besides(at)
            : default;

    private Moves Misfit(int one, int other, Point at) => poses.MovesAt(other, at).From(poses.MovesAt(one, at));
}
