using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>Divides the drawing among the fields of a layout, along straight seams in the middle of common ground.</summary>
internal static class Divider
{
    internal static Division Divide(Drawing drawing, Layout layout)
    {
        var territories = Territories(layout.Grounds);
        ImmutableArray<int?> owners = [.. drawing.Shapes.Select(s => Owner(s, layout.Grounds, territories))];
        var seams = SeamTracer.Trace(territories);
        ImmutableArray<Crossing> crossings =
        [
            .. from shape in Enumerable.Range(0, drawing.Shapes.Length)
            where owners[shape] is null
            let inside = new PathClipping(drawing.Shapes[shape].Footprint)
            from seam in seams
            from line in inside.Inside(seam.Line)
            select new Crossing(seam.Earlier, seam.Later, shape, line),
        ];
        var cost = SeamPrice.Of(drawing, crossings);
        return new(territories, owners, seams, crossings, new(cost, cost, owners.Count(o => o is null)));
    }

    /// <summary>
    /// Each field keeps its half of what it shares with each neighbour. Where three or more meet, halves can leave ground
    /// to nobody: it goes to the first field that has it.
    /// </summary>
    private static ImmutableArray<Region> Territories(ImmutableArray<Box> grounds)
    {
        var kept = grounds
            .Select(
                (ground, i) =>
                    Polygons.Subtract(
                        Region.Of(ground),
                        Polygons.Union(
                            grounds.Where((_, j) => j != i).Select(other => Region.Of(OthersHalf(ground, other)))
                        )
                    )
            )
            .ToArray();
        var rest = Polygons.Subtract(Polygons.Union(grounds.Select(Region.Of)), Polygons.Union(kept));
        for (var i = 0; i < kept.Length && !rest.IsEmpty; i++)
        {
            var taken = Polygons.Intersect(rest, Region.Of(grounds[i]));
            kept[i] = Polygons.Union(kept[i], taken);
            rest = Polygons.Subtract(rest, taken);
        }
        return [.. kept];
    }

    /// <summary>The part of common ground that belongs to the other field: its side of the middle line.</summary>
    private static Box OthersHalf(Box own, Box other)
    {
        var common = own.Common(other);
        if (common.IsEmpty)
            return Box.Empty;
        var middle = common.Centre;
        if (common.Width < common.Height)
            return IsBefore(own.Centre.X, other.Centre.X, own, other)
                ? common with
                {
                    Left = middle.X,
                }
                : common with
                {
                    Right = middle.X,
                };
        return IsBefore(own.Centre.Y, other.Centre.Y, own, other)
            ? common with
            {
                Top = middle.Y,
            }
            : common with
            {
                Bottom = middle.Y,
            };
    }

    /// <summary>Which of two boxes lies to the left (or above); a fixed answer even for equal middles.</summary>
    private static bool IsBefore(int own, int other, Box ownBox, Box otherBox) =>
        own != other
            ? own < other
            : (ownBox.Left, ownBox.Top, ownBox.Right, ownBox.Bottom).CompareTo(
                (otherBox.Left, otherBox.Top, otherBox.Right, otherBox.Bottom)
            ) < 0;

    /// <summary>A shape that fits a field is not cut: it goes to the field that has most of it anyway.</summary>
    private static int? Owner(Shape shape, ImmutableArray<Box> grounds, ImmutableArray<Region> territories)
    {
        var box = shape.Footprint.Bounds;
        var candidates = Enumerable.Range(0, grounds.Length).Where(i => grounds[i].Contains(box)).ToList();
        return candidates.Count switch
        {
            0 => null,
            1 => candidates[0],
            _ => candidates
                .OrderByDescending(i => Polygons.Intersect(territories[i], shape.Footprint).Area)
                .ThenBy(i => i)
                .First(),
        };
    }
}
