using System.Numerics;
using Splitter.Geometry;

namespace Splitter.Parts;

/// <summary>
/// Blocks by where the needle may come to them: a tree of boxes, each halved across its longer side (Bentley 1975).
/// Found are those alone that are open: not sewn yet, and lying over nothing that is still to be sewn.
/// </summary>
internal sealed class OpenStays
{
    private const int Root = 1;
    private const int None = -1;

    /// <summary>Around places: the root holds all of them, 2k and 2k + 1 the halves of k.</summary>
    private readonly Box[] boxes;

    /// <summary>Whose place a box holds, if it is but one.</summary>
    private readonly int[] owners;

    /// <summary>How many places of open blocks a box holds.</summary>
    private readonly int[] open;

    /// <summary>For each block the boxes of its single places.</summary>
    private readonly List<int>[] singles;

    /// <summary>Nothing is open at first.</summary>
    internal OpenStays(IReadOnlyList<Stay> stays)
    {
        (Point At, int Stay)[] places = [.. stays.SelectMany((stay, i) => stay.Places.Select(at => (at, i)))];
        var most = 2 * (int)BitOperations.RoundUpToPowerOf2((uint)places.Length);
        (boxes, owners, open) = (new Box[most], new int[most], new int[most]);
        singles = [.. stays.Select(_ => new List<int>())];
        Array.Fill(owners, None);
        Halve(Root, places);
    }

    /// <summary>How many boxes were looked at.</summary>
    internal long Looks { get; private set; }

    internal void Open(int stay) => Count(stay, 1);

    internal void Close(int stay) => Count(stay, -1);

    /// <summary>The one that costs least to jump to, of equals the first; at least one is open.</summary>
    internal int Nearest(Point from)
    {
        var (least, nearest) = (double.PositiveInfinity, None);
        Look(Root, CostTo(Root));
        return nearest;

        double CostTo(int box) =>
            JumpOrder.Cost(
                from,
                new(
                    Math.Clamp(from.X, boxes[box].Left, boxes[box].Right),
                    Math.Clamp(from.Y, boxes[box].Top, boxes[box].Bottom)
                )
            );

        void Look(int box, double cost)
        {
            Looks++;
            if (open[box] == 0 || cost > least)
                return;
            if (owners[box] is not None and var stay)
            {
                if (cost < least || stay < nearest)
                    (least, nearest) = (cost, stay);
                return;
            }
            var (one, other) = (CostTo(2 * box), CostTo((2 * box) + 1));
            if (one <= other)
                Look(2 * box, one);
            Look((2 * box) + 1, other);
            if (one > other)
                Look(2 * box, one);
        }
    }

    private void Count(int stay, int by)
    {
        foreach (var single in singles[stay])
            for (var box = single; box > 0; box /= 2)
                open[box] += by;
    }

    private void Halve(int box, Span<(Point At, int Stay)> places)
    {
        var around = Box.Empty;
        foreach (var (at, _) in places)
            around = around.Including(at);
        boxes[box] = around;
        if (places.Length == 1)
        {
            owners[box] = places[0].Stay;
            singles[places[0].Stay].Add(box);
            return;
        }
        if (around.Width >= around.Height)
            places.Sort((a, b) => a.At.X.CompareTo(b.At.X));
        else
            places.Sort((a, b) => a.At.Y.CompareTo(b.At.Y));
        var half = places.Length / 2;
        Halve(2 * box, places[..half]);
        Halve((2 * box) + 1, places[half..]);
    }
}
