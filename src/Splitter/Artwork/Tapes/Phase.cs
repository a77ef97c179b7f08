using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Tapes;

namespace Splitter.Artwork.Tapes;

/// <summary>A stretch of one thread that is sewn in one manner.</summary>
/// <param name="Kind">Fill, satin or run.</param>
/// <param name="Thread">The number of the thread within its colour block.</param>
/// <param name="From">Number of the hole that it begins in.</param>
/// <param name="To">Number of the hole that it ends in.</param>
/// <param name="Passes">Rows of a fill, stitches of a column.</param>
/// <param name="Spacing">Distance from one pass to the next, µm; 0 for a run.</param>
internal sealed record Phase(StitchKind Kind, int Thread, int From, int To, ImmutableArray<Pass> Passes, double Spacing)
{
    /// <summary>
    /// Fewer passes beside each other may be chance: a line that is sewn to and fro has three. Those of a tie, which
    /// lie on each other, do not count.
    /// </summary>
    private const int LeastPasses = 4;

    /// <summary>Passes that lie on each other are a line that is sewn several times, µm.</summary>
    private const double LeastSpacing = 60;

    /// <summary>A pass may lie this much farther off than the mean of those before it, as a factor and µm.</summary>
    private const double Uneven = 3;

    private const double UnevenBy = 200;

    /// <summary>The share of passes that are one stitch, from which on they are a column.</summary>
    private const double MostlySingle = 0.7;

    /// <summary>
    /// A longer stitch than a record holds, µm, is across a column and not in a row of a fill. Some programs have such
    /// stitches one way only, and two the other way. Common practice, no source.
    /// </summary>
    private const double LongestOfRows = TapeRecord.Longest * Units.TapeStep;

    /// <summary>The share of passes that are such a stitch, from which on they are a column.</summary>
    private const double OftenLong = 0.3;

    /// <summary>
    /// Rows and stitches of columns that are no farther apart hide what lies under them, µm: twice as far, and cloth
    /// shows.
    /// </summary>
    private const double MostClosed = 800;

    internal bool IsClosed => Kind != StitchKind.Run && Spacing * (Kind == StitchKind.Satin ? 2 : 1) <= MostClosed;

    /// <summary>The way that most passes go, of length 1, to either side.</summary>
    internal static Vector WayOf(IEnumerable<Pass> passes)
    {
        var sum = default(Vector);
        foreach (var way in passes.Select(p => p.Way))
            sum += Vector.Dot(sum, way) < 0 ? -way : way;
        return sum.Length > 0 ? sum.Unit : new(1, 0);
    }

    /// <summary>All of a thread, in sewing order; each begins in the hole in which the last one ended.</summary>
    internal static IEnumerable<Phase> Of(ImmutableArray<Point> holes, int thread)
    {
        var passes = Pass.Of(holes);
        var (sewn, k) = (0, 0);
        while (k < passes.Length)
        {
            var (last, spacing, apart) = Together(passes, k);
            if (apart < LeastPasses - 1 || spacing < LeastSpacing)
            {
                k = Math.Max(k + 1, last);
                continue;
            }
            var rows = passes[k..(last + 1)];
            if (sewn < rows[0].From)
                yield return new(StitchKind.Run, thread, sewn, rows[0].From, [], 0);
            yield return new(KindOf(rows, holes), thread, rows[0].From, rows[^1].To, rows, spacing);
            (sewn, k) = (rows[^1].To, last + 1);
        }
        if (sewn < holes.Length - 1 || passes.IsEmpty)
            yield return new(StitchKind.Run, thread, sewn, holes.Length - 1, [], 0);
    }

    /// <summary>
    /// The last of the passes that lie side by side from one on, always to the same side, their mean distance, and how
    /// many of them do not lie on the one before.
    /// </summary>
    private static (int Last, double Spacing, int Apart) Together(ImmutableArray<Pass> passes, int first)
    {
        var (sum, side, last, apart) = (0.0, 0, first, 0);
        for (; last + 1 < passes.Length; last++)
        {
            if (passes[last].Beside(passes[last + 1]) is not { } beside || Math.Abs(beside) > Pass.LongestTurn)
                break;
            // Every other pass goes the other way, and has its right hand on the other side.
            var (to, by) = ((last - first) % 2 == 0 ? beside : -beside, Math.Abs(beside));
            if (by >= LeastSpacing && side != 0 && Math.Sign(to) != side)
                break;
            var before = last - first;
            if (before >= 2 && by > (Uneven * sum / before) + UnevenBy)
                break;
            if (by >= LeastSpacing)
                (side, apart) = (Math.Sign(to), apart + 1);
            sum += by;
        }
        return (last, last == first ? 0 : sum / (last - first), apart);
    }

    private static StitchKind KindOf(ImmutableArray<Pass> rows, ImmutableArray<Point> holes)
    {
        var (single, lengthy) = (0, 0);
        foreach (var pass in rows)
        {
            var longest = 0.0;
            for (var i = pass.From + 1; i <= pass.To; i++)
                longest = Math.Max(longest, holes[i - 1].DistanceTo(holes[i]));
            if (!pass.IsMostly(longest))
                continue;
            single++;
            if (longest > LongestOfRows)
                lengthy++;
        }
        return single >= MostlySingle * rows.Length || lengthy >= OftenLong * rows.Length
            ? StitchKind.Satin
            : StitchKind.Fill;
    }
}
