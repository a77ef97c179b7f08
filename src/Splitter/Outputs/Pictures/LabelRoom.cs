using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// Where labels of a map find room: each goes where it hides least of what is there already, near to what it names.
/// Micrometres of the page.
/// </summary>
internal sealed class LabelRoom(Box page, int letters)
{
    /// <summary>What hiding all of a label's own area again costs, in heights of a letter by which it may lie farther off.</summary>
    private const double Hidden = 40;

    /// <summary>The same for lines that may run below a label, if need be.</summary>
    private const double Crossed = 8;

    /// <summary>Distances from what is named, in tenths of a letter's height.</summary>
    private static readonly int[] Distances = [4, 9, 15, 22, 30, 40];

    private static readonly (int X, int Y)[] Directions =
    [
        (1, 1),
        (-1, 1),
        (1, -1),
        (-1, -1),
        (1, 0),
        (-1, 0),
        (0, 1),
        (0, -1),
    ];

    private readonly List<Box> taken = [];
    private readonly List<Box> lines = [];

    /// <summary>Nothing should hide this.</summary>
    internal void Take(Box box) => taken.Add(box);

    /// <summary>Better not hide this line.</summary>
    internal void Cross(ReadOnlySpan<Point> line)
    {
        for (var i = 1; i < line.Length; i++)
        {
            var count = Math.Max(1, (int)(line[i - 1].DistanceTo(line[i]) / letters));
            for (var k = 0; k < count; k++)
                lines.Add(Box.Around([line[i - 1].Towards(line[i], (k + 0.5) / count)]).Grown(letters / 4));
        }
    }

    /// <summary>What a box would hide, in heights of a letter.</summary>
    internal double Cost(Box box)
    {
        if (!page.Contains(box))
            return double.PositiveInfinity;
        return (Hidden * Share(taken, box)) + (Crossed * Share(lines, box));
    }

    /// <summary>A place beside a point, which is taken from now on.</summary>
    /// <param name="towards">The side that is best where nothing speaks against it.</param>
    internal Box Beside(Point point, int width, int height, (int X, int Y) towards)
    {
        var best = (
            from distance in Distances
            from side in Directions
            let gap = distance * letters / 10
            // Diagonally as far off as straight.
            let reach = side.X != 0 && side.Y != 0 ? gap * 7 / 10 : gap
            let x = point.X + (side.X * (reach + (width / 2)))
            let y = point.Y + (side.Y * (reach + (height / 2)))
            let box = new Box(x - (width / 2), y - (height / 2), x + (width / 2), y + (height / 2))
            let cost = Cost(box) + (distance / 10.0) + (side == towards ? 0 : 0.5)
            orderby cost
            select box
        ).First();
        Take(best);
        return best;
    }

    private static double Share(List<Box> boxes, Box box)
    {
        var sum = 0.0;
        foreach (var other in boxes)
            if (other.Common(box) is { IsEmpty: false } common)
                sum += (double)common.Width * common.Height;
        return sum / ((double)box.Width * box.Height);
    }
}
