using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Fields.Covering;

/// <summary>
/// Moves the fields of a cover within the room that they have. First so that they meet better: neighbours share more
/// ground, corners lie further apart, and the way to the first hooping is shorter. Then so that their common grounds
/// lie where seams show less, as long as they still meet well. What only one field covers, it goes on covering.
/// </summary>
internal sealed class Settling
{
    /// <summary>Pairs of fields that are looked at for all covers together: some tenths of a second.</summary>
    private const long MostWork = 3_000_000;

    /// <summary>
    /// How much worse than in the best cover found fields may meet for seams that show less: an error of 0.5 mm becomes
    /// one of 0.6 mm, which no eye tells apart, while another place can halve what a seam shows.
    /// </summary>
    internal const double Allowance = 1.25;

    /// <summary>
    /// What the whole of the allowed misfit counts for, mm of plain fill: it decides where seams show the same, and
    /// else hardly.
    /// </summary>
    private const double SecondAim = 1;

    /// <summary>Gains smaller than this share of what there is are not worth a round.</summary>
    private const double LeastGain = 1e-4;

    private readonly CoverTask task;
    private readonly CoverGrid grid;
    private readonly Misfits misfits;
    private readonly SeamOutlook seams;
    private readonly Moves moves;
    private Func<ImmutableArray<Field>, double> aim;
    private long work;

    private Settling(CoverTask task, CoverGrid grid)
    {
        (this.task, this.grid, misfits, seams) = (task, grid, new(task, grid), new(task));
        moves = new(task, grid);
        aim = misfits.Sum;
    }

    /// <summary>
    /// The covers settled, those whose seams promise to show least, no two much alike, the best first; the one whose
    /// fields meet best is among them.
    /// </summary>
    internal static ImmutableArray<ImmutableArray<Field>> Settled(
        CoverTask task,
        ImmutableArray<ImmutableArray<Field>> covers,
        int most
    )
    {
        var settling = new Settling(task, new(task, covers.SelectMany(c => c)));
        ImmutableArray<ImmutableArray<Field>> fitting =
        [
            .. covers
                .Select(settling.OnCloth)
                .Select(cover => settling.Settled(cover, together: false, MostWork / 3 / covers.Length)),
        ];
        var fittest = settling.Settled(fitting.MinBy(settling.misfits.Sum), together: true, MostWork / 3 / most);
        var least = settling.misfits.Sum(fittest);
        settling.aim = fields => settling.Shown(fields, Misfits.Scaled(least, Allowance));
        var best = new Shortlist(settling.aim, most);
        foreach (var cover in fitting.Append(fittest))
            best.Add(settling.Settled(cover, together: false, MostWork / 3 / covers.Length));
        foreach (var cover in best.Covers)
            best.Add(settling.Settled(cover, together: true, MostWork / 3 / most));
        var meeting = best.Covers.RemoveAll(c => double.IsPositiveInfinity(settling.aim(c)));
        if (meeting.IsEmpty)
            return best.Covers;
        // What seams will show is only estimated: fields that were not moved for it may come out better.
        return meeting.Any(c => c.SequenceEqual(fittest)) ? meeting : [.. meeting.Take(most - 1), fittest];
    }

    /// <summary>What seams show, and a little of how fields meet; without bound where they meet too badly.</summary>
    private double Shown(ImmutableArray<Field> fields, double allowed)
    {
        var misfit = misfits.Sum(fields);
        return misfit > allowed || double.IsPositiveInfinity(misfit)
            ? double.PositiveInfinity
            : seams.Sum(fields) + (misfit == 0 ? 0 : SecondAim * Misfits.Root(misfit / allowed));
    }

    /// <param name="together">Neighbours are moved together, too.</param>
    private ImmutableArray<Field> Settled(ImmutableArray<Field> fields, bool together, long mostWork)
    {
        work = 0;
        grid.Reset(fields);
        var (open, sum) = (grid.Open, aim(fields));
        while (work < mostWork)
        {
            var before = sum;
            for (var i = 0; i < fields.Length && work < mostWork; i++)
            {
                (fields, sum) = Moved(fields, i, sum, open);
                for (var j = 0; j < i && together; j++)
                    if (fields[i].Usable.Meets(fields[j].Usable))
                        (fields, sum) = MovedTogether(fields, i, j, sum, open);
            }
            if (!(sum < before * (1 - LeastGain)))
                break;
        }
        return fields;
    }

    /// <summary>The fields with one of them moved to where they all meet best.</summary>
    private (ImmutableArray<Field> Fields, double Sum) Moved(ImmutableArray<Field> fields, int i, double sum, int open)
    {
        var best = fields;
        foreach (var place in moves.Of(fields, i))
            (best, sum) = Better(best, sum, open, fields.SetItem(i, task.Template.At(place, fields[i].Turn)), [i]);
        return (best, sum);
    }

    /// <summary>The fields with two of them moved by the same step, where all meet better then.</summary>
    private (ImmutableArray<Field> Fields, double Sum) MovedTogether(
        ImmutableArray<Field> fields,
        int i,
        int j,
        double sum,
        int open
    )
    {
        if (task.Fixed.Contains(fields[i]) || task.Fixed.Contains(fields[j]))
            return (fields, sum);
        var best = fields;
        foreach (var step in Moves.Steps)
        foreach (var by in new[] { new Point(step, 0), new Point(0, step) })
            (best, sum) = Better(
                best,
                sum,
                open,
                fields
                    .SetItem(i, task.Template.At(fields[i].Centre + by, fields[i].Turn))
                    .SetItem(j, task.Template.At(fields[j].Centre + by, fields[j].Turn)),
                [i, j]
            );
        return (best, sum);
    }

    /// <summary>
    /// The one of two covers whose fields meet better, when nothing more is left open and no hoop lies where none may.
    /// </summary>
    /// <param name="changed">The fields in which they differ.</param>
    private (ImmutableArray<Field> Fields, double Sum) Better(
        ImmutableArray<Field> best,
        double sum,
        int open,
        ImmutableArray<Field> tried,
        ReadOnlySpan<int> changed
    )
    {
        foreach (var i in changed)
            if (task.Forbids(tried[i]) || task.OverEdge(tried[i]) > task.OverEdge(best[i]))
                return (best, sum);
        work += tried.Length * tried.Length;
        return aim(tried) is var found && found < sum && Exchanged(best, tried, open, changed)
            ? (tried, found)
            : (best, sum);
    }

    /// <summary>Puts changed fields in place of others, unless more is left open then.</summary>
    private bool Exchanged(
        ImmutableArray<Field> fields,
        ImmutableArray<Field> others,
        int open,
        ReadOnlySpan<int> changed
    )
    {
        foreach (var i in changed)
        {
            grid.Add(fields[i], -1);
            grid.Add(others[i], 1);
        }
        if (grid.Open <= open)
            return true;
        foreach (var i in changed)
        {
            grid.Add(others[i], -1);
            grid.Add(fields[i], 1);
        }
        return false;
    }

    /// <summary>
    /// Fields that hang over the cloth's edge moved inwards, as far as they go on covering what only they cover, and
    /// all still reach each other. Later moves take none of them out again.
    /// </summary>
    private ImmutableArray<Field> OnCloth(ImmutableArray<Field> fields)
    {
        if (task.Cloth is not { } cloth || fields.All(f => task.OverEdge(f) == 0))
            return fields;
        grid.Reset(fields);
        var open = grid.Open;
        for (var i = 0; i < fields.Length; i++)
        {
            if (task.OverEdge(fields[i]) == 0 || moves.Room(fields[i]) is not { } room)
                continue;
            var at = fields[i].Centre;
            var to = at + ClothEdge.Inwards(cloth, fields[i].Bounds);
            to = new(Math.Clamp(to.X, room.Left, room.Right), Math.Clamp(to.Y, room.Top, room.Bottom));
            foreach (var place in new[] { to, new(to.X, at.Y), new(at.X, to.Y) })
            {
                var tried = fields.SetItem(i, task.Template.At(place, fields[i].Turn));
                if (
                    task.OverEdge(tried[i]) >= task.OverEdge(fields[i])
                    || task.Forbids(tried[i])
                    || double.IsPositiveInfinity(aim(tried))
                    || !Exchanged(fields, tried, open, [i])
                )
                    continue;
                fields = tried;
                break;
            }
        }
        return fields;
    }
}
