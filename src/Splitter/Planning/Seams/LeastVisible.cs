using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>Territories whose seams show least.</summary>
internal static class LeastVisible
{
    /// <summary>Areas of territories add up to that of all ground but for this, square µm: none overlaps another.</summary>
    private const double Exactly = 1;

    /// <param name="margin">How far seams stay away from where a field ends, µm.</param>
    /// <returns>Null where no such division was found that is sound.</returns>
    internal static ImmutableArray<Region>? Territories(
        Surface surface,
        ImmutableArray<Box> grounds,
        ImmutableArray<Region> straight,
        int margin
    )
    {
        var grid = new SeamGrid(grounds, margin);
        var start = Start(grid, straight);
        var fields = Expansion.Cheapest(LinkPrices.Of(surface, grid), start, grounds.Length);
        Islands.Absorb(grid, fields);
        var smoother = new ArcSmoother(surface, grid);
        var lines = ArcTracer.Trace(grid, fields).Select(smoother.Draw);
        var territories = Gather(Polygons.Faces(lines), grid, fields);
        return IsSound(territories, grounds) ? territories : null;
    }

    /// <summary>The straight division, as far as cells may follow it.</summary>
    private static ImmutableArray<int> Start(SeamGrid grid, ImmutableArray<Region> straight)
    {
        var contains = straight.Select(Polygons.Containment).ToArray();
        return
        [
            .. grid.Allowed.Select(
                (allowed, cell) =>
                {
                    if (allowed.Length <= 1)
                        return allowed.IsEmpty ? -1 : allowed[0];
                    var at = grid.Middle(cell);
                    return allowed.FirstOrDefault(f => contains[f](at.X, at.Y), allowed[0]);
                }
            ),
        ];
    }

    /// <summary>Each face goes to the field of the cell in its middle; where smoothed lines cross, to one that can sew it.</summary>
    private static ImmutableArray<Region> Gather(
        ImmutableArray<(Region Face, Point Inside)> faces,
        SeamGrid grid,
        int[] fields
    )
    {
        var parts = grid.Grounds.Select(_ => new List<Region>()).ToArray();
        foreach (var (face, inside) in faces)
        {
            var field = fields[grid.At(grid.Column(inside.X), grid.Row(inside.Y))];
            if (field >= 0 && !grid.Grounds[field].Contains(face.Bounds))
                field = Enumerable
                    .Range(0, grid.Grounds.Length)
                    .FirstOrDefault(f => grid.Grounds[f].Contains(face.Bounds), -1);
            if (field >= 0)
                parts[field].Add(face);
        }
        return [.. parts.Select(Polygons.Union)];
    }

    private static bool IsSound(ImmutableArray<Region> territories, ImmutableArray<Box> grounds)
    {
        var all = Polygons.Union(grounds.Select(Region.Of)).Area;
        return Math.Abs(territories.Sum(t => t.Area) - all) <= Exactly
            && Math.Abs(Polygons.Union(territories).Area - all) <= Exactly
            && territories.Zip(grounds).All(pair => pair.First.IsEmpty || pair.Second.Contains(pair.First.Bounds));
    }
}
