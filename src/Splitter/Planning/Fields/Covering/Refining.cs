using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Fields.Covering;

/// <summary>
/// Moves the fields of a cover, one at a time, to where seams show less when they are really drawn. What estimates of
/// them promise decides only which places are tried.
/// </summary>
internal static class Refining
{
    /// <summary>Places that are tried for all fields together: two or three seconds.</summary>
    private const int MostTrials = 240;

    /// <summary>Places that are tried for a field at once.</summary>
    private const int Tried = 8;

    /// <summary>Smaller gains are within what the coarse drawing of seams does not know, mm of plain fill.</summary>
    private const double LeastGain = 2;

    /// <summary>How much worse fields may meet: an error of 0.5 mm becomes one of 0.52 mm.</summary>
    internal const double Allowance = 1.05;

    /// <param name="fields">In sewing order.</param>
    /// <param name="shown">What seams in a window show.</param>
    /// <param name="jobs">How many threads may ask for it at once.</param>
    internal static ImmutableArray<Field> Refined(
        CoverTask task,
        ImmutableArray<Field> fields,
        Func<ImmutableArray<Box>, Box, double> shown,
        int jobs
    )
    {
        var grid = new CoverGrid(task, fields);
        var (misfits, outlook, moves) = (new Misfits(task, grid), new SeamOutlook(task), new Moves(task, grid));
        grid.Reset(fields);
        var (open, allowed) = (grid.Open, Misfits.Scaled(misfits.Sum(fields), Allowance));
        var trials = 0;
        // A field is worth trying again when a neighbour has moved.
        var stale = Enumerable.Repeat(true, fields.Length).ToArray();
        while (trials < MostTrials && Array.IndexOf(stale, true) >= 0)
            for (var i = 0; i < fields.Length && trials < MostTrials; i++)
            {
                if (!stale[i])
                    continue;
                stale[i] = false;
                ImmutableArray<ImmutableArray<Field>> tried =
                [
                    .. moves
                        .Of(fields, i)
                        .Distinct()
                        .Where(place => place != fields[i].Centre)
                        .Select(place => fields.SetItem(i, task.Template.At(place, fields[i].Turn)))
                        .Where(f =>
                            HoldsFirst(f[0]) && !task.Forbids(f[i]) && task.OverEdge(f[i]) <= task.OverEdge(fields[i])
                        )
                        .Where(f => misfits.Sum(f) <= allowed && Covers(i, f[i]))
                        .OrderBy(outlook.Sum)
                        .Take(Tried),
                ];
                if (tried.IsEmpty)
                    continue;
                var window = Box.Around(tried.Add(fields).Select(f => task.Template.Ground(f[i])));
                var costs = InOrder.Select(
                    tried.Add(fields),
                    jobs,
                    f => shown([.. f.Select(task.Template.Ground)], window)
                );
                trials += costs.Length;
                var best = costs.IndexOf(costs.Min());
                if (costs[best] > costs[^1] - LeastGain)
                    continue;
                grid.Exchange(fields[i], tried[best][i]);
                fields = tried[best];
                for (var j = 0; j < fields.Length; j++)
                    stale[j] |= fields[j].Usable.Meets(window);
            }
        return fields;

        bool HoldsFirst(Field first) => task.Held is not { } held || first.Usable.Contains(held);

        bool Covers(int i, Field moved)
        {
            grid.Exchange(fields[i], moved);
            var covers = grid.Open <= open;
            grid.Exchange(moved, fields[i]);
            return covers;
        }
    }
}
