using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>Divides the drawing along straight seams in the middle of common ground.</summary>
internal static class StraightSeams
{
    internal static Network Draw(Drawing drawing, ImmutableArray<Box> grounds, Wholeness wholeness)
    {
        var territories = Territories(grounds);
        return new(
            territories,
            [.. drawing.Shapes.Select((shape, i) => Owner(shape, wholeness.Fields[i], territories))],
            SeamTracer.Trace(territories)
        );
    }

    /// <summary>
    /// Each field keeps its half of what it shares with each neighbour. Where three or more meet, halves can leave
    /// ground to nobody: it goes to the first field that has it.
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

    /// <summary>
    /// The part of common ground that belongs to the other field: its side of the middle line across the way between
    /// them.
    /// </summary>
    private static Box OthersHalf(Box own, Box other)
    {
        var common = own.Common(other);
        if (common.IsEmpty)
            return Box.Empty;
        var middle = common.Centre;
        if (Math.Abs((long)own.Centre.X - other.Centre.X) >= Math.Abs((long)own.Centre.Y - other.Centre.Y))
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

    /// <summary>
    /// A shape that fits a field goes whole to the one, of those that it fits, that has most of it anyway.
    /// </summary>
    private static int? Owner(Shape shape, int[] fields, ImmutableArray<Region> territories) =>
        fields.Length switch
        {
            0 => null,
            1 => fields[0],
            _ => fields
                .OrderByDescending(i => Polygons.Intersect(territories[i], shape.Footprint).Area)
                .ThenBy(i => i)
                .First(),
        };
}
