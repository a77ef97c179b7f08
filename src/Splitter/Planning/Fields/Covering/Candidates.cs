using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Fields.Covering;

/// <summary>The fields that a search chooses from, and the table of what each covers.</summary>
internal sealed class Candidates
{
    private Candidates(ImmutableArray<Field> fields, ImmutableArray<Box> grounds, CoverTable table, int locked)
    {
        (Fields, Grounds, Table) = (fields, grounds, table);
        Locked = [.. Enumerable.Range(fields.Length - locked, locked)];
    }

    /// <summary>All of them; fixed ones last.</summary>
    internal ImmutableArray<Field> Fields { get; }

    /// <summary>The ground of each.</summary>
    internal ImmutableArray<Box> Grounds { get; }

    /// <summary>What each covers: cells of the drawing, and boxes that must stay whole.</summary>
    internal CoverTable Table { get; }

    /// <summary>Those that are there in any case.</summary>
    internal ImmutableArray<int> Locked { get; }

    /// <summary>The fields with these numbers.</summary>
    internal ImmutableArray<Field> Of(ImmutableArray<int> numbers) => [.. numbers.Select(i => Fields[i])];

    /// <param name="edges">Where drawn things begin and end.</param>
    /// <param name="features">How many places along an axis may be flush with drawn things.</param>
    /// <param name="known">Fields whose edges are places too.</param>
    /// <param name="jobs">How many threads may work.</param>
    internal static Candidates For(
        CoverTask task,
        DrawnEdges edges,
        int features,
        ImmutableArray<Field> known,
        int jobs = 1
    )
    {
        var box = task.Bounds;
        var sizes = task.Turns.Select(task.GroundOf).ToArray();
        var hints = known.Select(task.Template.Ground).ToList();
        var fixedGrounds = task.Fixed.Select(task.Template.Ground).ToList();
        var common = task.Common;
        var (xStarts, xEnds) = edges.Across(features);
        var (yStarts, yEnds) = edges.Down(features);
        foreach (var ground in fixedGrounds)
        {
            xStarts.AddRange([ground.Right - task.SeamShare, ground.Right - common]);
            xEnds.AddRange([ground.Left + task.SeamShare, ground.Left + common]);
            yStarts.AddRange([ground.Bottom - task.SeamShare, ground.Bottom - common]);
            yEnds.AddRange([ground.Top + task.SeamShare, ground.Top + common]);
        }
        foreach (var zone in task.Forbidden)
        {
            // Hoops end before a forbidden zone and begin behind it; grounds are smaller by what stays free.
            var free = task.Template.Clearance + task.Template.Reach + Units.TapeStep;
            xStarts.Add(zone.Right + free);
            xEnds.Add(zone.Left - free);
            yStarts.Add(zone.Bottom + free);
            yEnds.Add(zone.Top - free);
        }
        xStarts.AddRange(hints.Select(h => h.Left));
        yStarts.AddRange(hints.Select(h => h.Top));
        var lefts = Positions.Along(
            box.Left,
            box.Right,
            xStarts,
            xEnds,
            [.. sizes.Select(s => s.Width)],
            [.. sizes.Select(s => s.Left)],
            task.SeamShare,
            common
        );
        var tops = Positions.Along(
            box.Top,
            box.Bottom,
            yStarts,
            yEnds,
            [.. sizes.Select(s => s.Height)],
            [.. sizes.Select(s => s.Top)],
            task.SeamShare,
            common
        );
        var fields = ImmutableArray.CreateBuilder<Field>();
        for (var t = 0; t < sizes.Length; t++)
        {
            // Fields may have to hang further over the drawing's edge than they need for all else.
            var limits = task.Turning?.Limits(task.Template.At(default, task.Turns[t])) ?? [];
            int[] xs = [.. lefts[t].Select(left => left - sizes[t].Left).Union(limits.Select(p => p.X)).Order()];
            int[] ys = [.. tops[t].Select(top => top - sizes[t].Top).Union(limits.Select(p => p.Y)).Order()];
            foreach (var y in ys)
            foreach (var x in xs)
            {
                var field = task.Template.At(new(x, y), task.Turns[t]);
                if (!task.Forbids(field) && task.Template.Ground(field).Meets(box))
                    fields.Add(field);
            }
        }
        fields.AddRange(task.Fixed);
        ImmutableArray<Box> grounds = [.. fields.Select(task.Template.Ground)];
        return new(fields.ToImmutable(), grounds, CoverRows.Table(task, grounds, jobs), task.Fixed.Length);
    }
}
