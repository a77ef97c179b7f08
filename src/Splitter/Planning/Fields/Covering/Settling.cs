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
    private readonly Moves moves;
    private readonly Func<ImmutableArray<Field>, double> aim;
    private long work;

    /// <param name="grid">For this cover alone.</param>
    /// <param name="aim">What is to become less.</param>
    private Settling(CoverTask task, CoverGrid grid, Func<ImmutableArray<Field>, double> aim)
    {
        (this.task, this.grid, this.aim) = (task, grid, aim);
        moves = new(task, grid);
    }

    /// <summary>
    /// The covers settled, those whose seams promise to show least, no two much alike, the best first; the one whose
    /// fields meet best is among them.
    /// </summary>
    /// <param name="jobs">How many threads may work.</param>
    internal static ImmutableArray<ImmutableArray<Field>> Settled(
        CoverTask task,
        ImmutableArray<ImmutableArray<Field>> covers,
        int most,
        int jobs = 1
    )
    {
        var pattern = new CoverGrid(task, covers.SelectMany(c => c));
        var (misfits, seams) = (new Misfits(task, pattern), new SeamOutlook(task));
        var (alone, together) = (MostWork / 3 / covers.Length, MostWork / 3 / most);
        var fitting = InOrder.Select(covers, jobs, cover => By(misfits.Sum).SettledOnCloth(cover, alone));
        var fittest = By(misfits.Sum).Settled(fitting.MinBy(misfits.Sum), together: true, together);
        var allowed = Misfits.Scaled(misfits.Sum(fittest), Allowance);
        var best = new Shortlist(Shown, most);
        Add(fitting.Add(fittest), cover => By(Shown).Settled(cover, together: false, alone));
        Add(best.Covers, cover => By(Shown).Settled(cover, together: true, together));
        var meeting = best.Covers.RemoveAll(c => double.IsPositiveInfinity(Shown(c)));
        if (meeting.IsEmpty)
            return best.Covers;
        // What seams will show is only estimated: fields that were not moved for it may come out better.
        return meeting.Any(c => c.SequenceEqual(fittest)) ? meeting : [.. meeting.Take(most - 1), fittest];

        Settling By(Func<ImmutableArray<Field>, double> aim) => new(task, new(pattern), aim);

        void Add(ImmutableArray<ImmutableArray<Field>> some, Func<ImmutableArray<Field>, ImmutableArray<Field>> settled)
        {
            foreach (var cover in InOrder.Select(some, jobs, settled))
                best.Add(cover);
        }

        // What seams show, and a little of how fields meet; without bound where they meet too badly.
        double Shown(ImmutableArray<Field> fields)
        {
            var misfit = misfits.Sum(fields);
            return misfit > allowed || double.IsPositiveInfinity(misfit)
                ? double.PositiveInfinity
                : seams.Sum(fields) + (misfit == 0 ? 0 : SecondAim * Misfits.Root(misfit / allowed));
        }
    }

    private ImmutableArray<Field> SettledOnCloth(ImmutableArray<Field> fields, long mostWork) =>
        Settled(OnCloth(fields), together: false, mostWork);

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
            grid.Exchange(fields[i], others[i]);
        if (grid.Open <= open)
            return true;
        foreach (var i in changed)
            grid.Exchange(others[i], fields[i]);
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
