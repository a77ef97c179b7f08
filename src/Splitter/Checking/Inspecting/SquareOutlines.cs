using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Stitching.Density;

namespace Splitter.Checking.Inspecting;

/// <summary>
/// Outlines of ground made of whole squares, holes turning the other way: drawn as one area, no hair of what lies below
/// shows between two squares.
/// </summary>
internal static class SquareOutlines
{
    /// <summary>Corners of a square clockwise from the top left one, and the step along the side that begins there.</summary>
    private static readonly ImmutableArray<(Square Corner, Square Along, Square Outside)> Sides =
    [
        (new(0, 0), new(1, 0), new(0, -1)),
        (new(1, 0), new(0, 1), new(1, 0)),
        (new(1, 1), new(-1, 0), new(0, 1)),
        (new(0, 1), new(0, -1), new(-1, 0)),
    ];

    /// <param name="squares">In any order that is always the same.</param>
    internal static ImmutableArray<ImmutableArray<Point>> Of(ImmutableArray<Square> squares)
    {
        var ground = squares.ToHashSet();
        // Where two squares touch at a corner, two sides begin there.
        var begins = new Dictionary<Square, List<int>>();
        foreach (var square in squares)
            for (var side = 0; side < Sides.Length; side++)
                if (!ground.Contains(Sum(square, Sides[side].Outside)))
                {
                    var corner = Sum(square, Sides[side].Corner);
                    if (!begins.TryGetValue(corner, out var sides))
                        begins.Add(corner, sides = []);
                    sides.Add(side);
                }
        var outlines = ImmutableArray.CreateBuilder<ImmutableArray<Point>>();
        foreach (var square in squares)
            while (begins.TryGetValue(square, out var open) && open.Count > 0)
                outlines.Add(Walk(square, begins));
        return outlines.ToImmutable();
    }

    /// <summary>Round once, from a top left corner, where every outline has one.</summary>
    private static ImmutableArray<Point> Walk(Square start, Dictionary<Square, List<int>> begins)
    {
        var outline = ImmutableArray.CreateBuilder<Point>();
        var (at, before) = (start, -1);
        do
        {
            var side = begins[at][0];
            begins[at].RemoveAt(0);
            if (side != before)
                outline.Add(new(at.Column * Square.Side, at.Row * Square.Side));
            (at, before) = (Sum(at, Sides[side].Along), side);
        } while (at != start);
        return outline.ToImmutable();
    }

    private static Square Sum(Square one, Square other) => new(one.Column + other.Column, one.Row + other.Row);
}
