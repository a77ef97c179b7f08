using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>
/// Divides the drawing where it shows least. Cells of ground and shapes that stay whole get their fields together, at
/// the least cost; the boundaries between the fields are then smoothed, each once for both its sides.
/// </summary>
internal static class LeastVisibleSeams
{
    /// <summary>
    /// How far a smoothed seam may stray from the grid's, µm. Seams that run into each other are drawn again, closer to
    /// the grid; on the grid itself they never touch.
    /// </summary>
    private static readonly ImmutableArray<double> Strays = [8000, 700];

    internal static Network Draw(
        Drawing drawing,
        ImmutableArray<Box> grounds,
        Wholeness wholeness,
        SeamRoom room,
        Network start,
        SeamPrice price,
        CoverMap map,
        int jobs
    )
    {
        var grid = new SeamGrid(grounds);
        var (layers, begun) = InOrder.Both(
            jobs,
            () => new LayerMap(grid, drawing, wholeness.IsCut),
            () => Start(grid, drawing, start)
        );
        var problem = SeamCosts.State(grid, drawing, wholeness, room, layers, jobs);
        var choice = Labelling.Solve(problem, begun, jobs);
        var labels = choice[..grid.CellCount];
        Islands.Remove(grid, labels);
        ImmutableArray<int?> owners =
        [
            .. drawing.Shapes.Select((_, i) => wholeness.IsCut(i) ? (int?)null : choice[grid.CellCount + i]),
        ];
        var (arcs, rings) = ArcTracer.Trace(grid, labels);
        var smooth = Smooth(
            arcs,
            grounds,
            owners,
            new ArcSmoother(price, room, map, Outlines.Of(drawing), grid, layers),
            jobs
        );
        return new(
            InOrder.Select([.. Enumerable.Range(0, grounds.Length)], jobs, field => Territory(field, smooth, rings)),
            owners,
            [
                .. smooth
                    .Where(arc => arc.IsSeam)
                    .Select(arc => new Seam(
                        Math.Min(arc.Left, arc.Right),
                        Math.Max(arc.Left, arc.Right),
                        new Polyline(arc.Points)
                    ))
                    .OrderBy(s => (s.Earlier, s.Later)),
            ]
        );
    }

    /// <summary>The straight division on the grid.</summary>
    private static int[] Start(SeamGrid grid, Drawing drawing, Network straight)
    {
        var start = grid.Fields.Select(fields => fields.Length == 0 ? ArcTracer.Outside : fields[0]).ToArray();
        for (var field = 0; field < straight.Territories.Length; field++)
        {
            var index = field;
            Scan.Cover(
                straight.Territories[field],
                grid.MiddleX,
                grid.MiddleY,
                (row, from, to) =>
                {
                    for (var cell = grid.CellAt(from, row); cell <= grid.CellAt(to, row); cell++)
                        if (grid.Fields[cell].Contains(index))
                            start[cell] = index;
                }
            );
        }
        return [.. start, .. drawing.Shapes.Select((_, i) => straight.Owners[i] ?? ArcTracer.Outside)];
    }

    private static ImmutableArray<SeamArc> Smooth(
        ImmutableArray<SeamArc> arcs,
        ImmutableArray<Box> grounds,
        ImmutableArray<int?> owners,
        ArcSmoother smoother,
        int jobs
    )
    {
        // How often each arc has been sent back; past the last stray it stays on the grid.
        var tries = arcs.Select(arc => arc.IsSeam ? 0 : Strays.Length).ToArray();
        var smooth = InOrder.Select([.. Enumerable.Range(0, arcs.Length)], jobs, Drawn).ToArray();
        while (true)
        {
            var clashing = ArcClashes.Find([.. smooth]).Where(i => tries[i] < Strays.Length).Order().ToList();
            if (clashing.Count == 0)
                return [.. smooth];
            foreach (var i in clashing)
                tries[i]++;
            foreach (var (i, arc) in clashing.Zip(InOrder.Select(clashing, jobs, Drawn)))
                smooth[i] = arc;
        }

        SeamArc Drawn(int i) =>
            tries[i] < Strays.Length
                ? smoother.Smooth(arcs[i], grounds, owners, Strays[tries[i]])
                : arcs[i] with
                {
                    Points = WithoutStraightPlaces(arcs[i].Points),
                };
    }

    /// <summary>Drops the places at which a line along the grid runs straight on.</summary>
    private static ImmutableArray<Point> WithoutStraightPlaces(ImmutableArray<Point> points) =>
        [
            .. points.Where(
                (p, i) =>
                    i == 0
                    || i == points.Length - 1
                    || !(
                        (points[i - 1].X == p.X && p.X == points[i + 1].X)
                        || (points[i - 1].Y == p.Y && p.Y == points[i + 1].Y)
                    )
            ),
        ];

    private static Region Territory(int field, ImmutableArray<SeamArc> arcs, ImmutableArray<ArcRing> rings) =>
        Polygons.FromRings(
            rings
                .Where(ring => ring.Field == field)
                .Select(ring => new Ring([
                    .. ring.Arcs.SelectMany(part =>
                        part.Forward ? arcs[part.Arc].Points.SkipLast(1) : arcs[part.Arc].Points.Reverse().SkipLast(1)
                    ),
                ])),
            FillRule.EvenOdd
        );
}
