using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>
/// Walks round the territories of a divided grid. Every stretch of boundary comes out once, whichever of its two sides
/// comes first, so that both sides still share it when it has been smoothed.
/// </summary>
internal sealed class ArcTracer
{
    /// <summary>The label of cells that no field holds.</summary>
    internal const int Outside = -1;

    private static readonly ImmutableArray<(int X, int Y)> Moves = [(1, 0), (0, 1), (-1, 0), (0, -1)];

    private readonly SeamGrid grid;
    private readonly int[] labels;
    private readonly List<SeamArc> arcs = [];
    private readonly List<ArcRing> rings = [];

    /// <summary>Arcs by their first step, in both directions.</summary>
    private readonly Dictionary<Step, (int Arc, bool Forward)> byStep = [];

    private ArcTracer(SeamGrid grid, int[] labels) => (this.grid, this.labels) = (grid, labels);

    /// <summary>
    /// A step along a line of the grid; direction 0 is right, and on clockwise as seen on the drawing.
    /// </summary>
    private readonly record struct Step(int X, int Y, int Direction)
    {
        internal (int X, int Y) End => (X + Moves[Direction].X, Y + Moves[Direction].Y);

        internal Step Back => new(End.X, End.Y, (Direction + 2) % 4);
    }

    internal static (ImmutableArray<SeamArc> Arcs, ImmutableArray<ArcRing> Rings) Trace(SeamGrid grid, int[] labels)
    {
        var tracer = new ArcTracer(grid, labels);
        var seen = new HashSet<Step>();
        for (var y = 0; y <= grid.Rows; y++)
        for (var x = 0; x <= grid.Columns; x++)
        for (var direction = 0; direction < 4; direction++)
        {
            var first = new Step(x, y, direction);
            if (!tracer.IsBoundary(first) || !seen.Add(first))
                continue;
            var steps = new List<Step> { first };
            for (var step = tracer.Next(first); step != first; step = tracer.Next(step))
            {
                seen.Add(step);
                steps.Add(step);
            }
            tracer.AddRing(steps);
        }
        return ([.. tracer.arcs], [.. tracer.rings]);
    }

    /// <summary>Cuts a ring where three or more labels meet.</summary>
    private void AddRing(List<Step> steps)
    {
        var starts = Enumerable.Range(0, steps.Count).Where(i => IsJunction(steps[i].X, steps[i].Y)).ToList();
        // Without one the ring starts at its topmost place, which is the same from both sides.
        if (starts.Count == 0)
            starts.Add(Enumerable.Range(0, steps.Count).MinBy(i => (steps[i].Y, steps[i].X)));
        var parts = new List<(int, bool)>();
        for (var k = 0; k < starts.Count; k++)
        {
            var length = ((starts[(k + 1) % starts.Count] - starts[k] + steps.Count - 1) % steps.Count) + 1;
            parts.Add(Arc([.. Enumerable.Range(starts[k], length).Select(i => steps[i % steps.Count])]));
        }
        rings.Add(new ArcRing(RightOf(steps[0]), [.. parts]));
    }

    private (int Arc, bool Forward) Arc(ImmutableArray<Step> steps)
    {
        if (byStep.TryGetValue(steps[0], out var known))
            return known;
        byStep[steps[0]] = (arcs.Count, true);
        byStep[steps[^1].Back] = (arcs.Count, false);
        IEnumerable<(int X, int Y)> places = steps.Select(s => (s.X, s.Y)).Append(steps[^1].End);
        arcs.Add(
            new SeamArc(
                RightOf(steps[0]),
                RightOf(steps[0].Back),
                [.. places.Select(p => new Point(grid.X[p.X], grid.Y[p.Y]))]
            )
        );
        return (arcs.Count - 1, true);
    }

    /// <summary>
    /// The next step round the cells on the right; cells that touch at a corner only are walked round singly.
    /// </summary>
    private Step Next(Step step)
    {
        var (x, y) = step.End;
        foreach (var turn in (ReadOnlySpan<int>)[1, 0, 3])
        {
            var next = new Step(x, y, (step.Direction + turn) % 4);
            if (IsBoundary(next) && RightOf(next) == RightOf(step))
                return next;
        }
        throw new InvalidOperationException("A boundary of cells has no end.");
    }

    private bool IsBoundary(Step step) => RightOf(step) is var right && right != Outside && right != RightOf(step.Back);

    private bool IsJunction(int x, int y)
    {
        var meeting = 0;
        for (var direction = 0; direction < 4; direction++)
        {
            var step = new Step(x, y, direction);
            if (RightOf(step) != RightOf(step.Back))
                meeting++;
        }
        return meeting > 2;
    }

    /// <summary>The label on the right of a step.</summary>
    private int RightOf(Step step)
    {
        var (column, row) = step.Direction switch
        {
            0 => (step.X, step.Y),
            1 => (step.X - 1, step.Y),
            2 => (step.X - 1, step.Y - 1),
            _ => (step.X, step.Y - 1),
        };
        var cell = grid.CellAt(column, row);
        return cell < 0 ? Outside : labels[cell];
    }
}
