using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// Where labels of a map find room: clear of points, corners and of each other if there is any such place near, else
/// where they hide least, and near to what they name. Micrometres of the page.
/// </summary>
internal sealed class LabelRoom(Box page, int letters)
{
    /// <summary>
    /// What touching a thing that nobody may lose costs, in heights of a letter by which a label may lie farther off:
    /// more than the farthest place, so that it only happens where no place is clear.
    /// </summary>
    private const double Touched = 100;

    /// <summary>What hiding all of a label's own area again costs beside that.</summary>
    private const double Hidden = 40;

    /// <summary>The same for lines that may run below a label, if need be.</summary>
    private const double Crossed = 8;

    /// <summary>Distances from what is named, in tenths of a letter's height.</summary>
    private static readonly int[] Distances = [5, 9, 13, 18, 24, 31, 39, 48, 58, 70, 85];

    /// <summary>Sixteen ways round: a label can slip past what stands straight or slanting.</summary>
    private static readonly ImmutableArray<(double X, double Y)> Directions = Circle.Directions(16);

    /// <summary>Places that are looked at along each side of an area: even, so that one is the middle.</summary>
    private const int Places = 16;

    /// <summary>What it costs to stand beside a line and not on it, in heights of a letter.</summary>
    private const double BesideLine = 3;

    /// <summary>
    /// Of <see cref="Distances"/> those at which one still sees what line is meant: a thin one leads there.
    /// </summary>
    private const int Beyond = 8;

    private readonly List<Box> taken = [];
    private readonly List<Box> lines = [];

    /// <summary>Nothing may hide this.</summary>
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

    /// <summary>Better not hide its sides.</summary>
    internal void Cross(Box box)
    {
        var (topRight, bottomLeft) = (new Point(box.Right, box.Top), new Point(box.Left, box.Bottom));
        var (topLeft, bottomRight) = (new Point(box.Left, box.Top), new Point(box.Right, box.Bottom));
        Cross([topLeft, topRight, bottomRight, bottomLeft, topLeft]);
    }

    /// <summary>What a box would hide, in heights of a letter.</summary>
    internal double Cost(Box box)
    {
        if (!page.Contains(box))
            return double.PositiveInfinity;
        var clear = box.Grown(letters / 6);
        return (Touched * taken.Count(t => t.Meets(clear)))
            + (Hidden * Share(taken, box))
            + (Crossed * Share(lines, box));
    }

    /// <summary>A place beside a point, which is taken from now on.</summary>
    /// <param name="towards">The side that is best where nothing speaks against it.</param>
    internal Box Beside(Point point, int width, int height, (int X, int Y) towards)
    {
        var near = Near(Box.Around([point]).Grown((Distances[^1] * letters / 10) + width + height + letters));
        (double Cost, Box Box)? best = null;
        foreach (var distance in Distances)
        foreach (var side in Directions)
        {
            var (off, aversion) = (distance / 10.0, Aversion(side, towards));
            // Where that alone is no less, what else it costs need not be known: of equals the first is taken.
            if (off + aversion >= best?.Cost)
                continue;
            var box = Aside(point, side, distance * letters / 10, width, height);
            var cost = near.Cost(box) + off + aversion;
            if (cost >= best?.Cost)
                continue;
            cost += near.LineCost(point, box);
            if (best is null || cost < best.Value.Cost)
                best = (cost, box);
        }
        Take(best!.Value.Box);
        return best.Value.Box;
    }

    /// <summary>The same room with only what meets a box: of very many labels each has few others near.</summary>
    internal LabelRoom Near(Box box)
    {
        var near = new LabelRoom(page, letters);
        near.taken.AddRange(taken.Where(t => t.Meets(box)));
        near.lines.AddRange(lines.Where(l => l.Meets(box)));
        return near;
    }

    /// <summary>A place on an area, as near to its middle as can be; it is taken from now on.</summary>
    internal Box Across(Box area, int width, int height)
    {
        var best = (
            from across in Enumerable.Range(0, Places + 1)
            from down in Enumerable.Range(0, Places + 1)
            let x = Between(area.Left + (width / 2), area.Right - (width / 2), across)
            let y = Between(area.Top + (height / 2), area.Bottom - (height / 2), down)
            let box = new Box(x - (width / 2), y - (height / 2), x + (width / 2), y + (height / 2))
            let off = Math.Max(Math.Abs(across - (Places / 2)), Math.Abs(down - (Places / 2)))
            let cost = Cost(box) + off
            orderby cost
            select box
        ).First();
        Take(best);
        return best;
    }

    /// <summary>A place on a line, as near to its middle as can be; it is taken from now on.</summary>
    internal Box Along(Point start, Point end, int width, int height)
    {
        var best = (
            from step in Enumerable.Range(1, Places - 1)
            let middle = start.Towards(end, (double)step / Places)
            let box = new Box(
                middle.X - (width / 2),
                middle.Y - (height / 2),
                middle.X + (width / 2),
                middle.Y + (height / 2)
            )
            let cost = Cost(box) + Math.Abs(step - (Places / 2))
            orderby cost
            select box
        ).First();
        Take(best);
        return best;
    }

    /// <summary>
    /// What a line is called: on it near its middle if that is clear, else beside it; the place on the line, and that
    /// of the words, which is taken from now on. Null where words would lie on another line, and seem to be its own, or
    /// touch a mark wherever they lay.
    /// </summary>
    internal (Point On, Box Words)? OnLine(
        (Point From, Point To) line,
        int width,
        int height,
        IEnumerable<(Point From, Point To)> others
    )
    {
        var (start, end) = line;
        var foreign = others.SelectMany(other => Along(other.From, other.To)).ToList();
        var length = Math.Max(1, start.DistanceTo(end));
        var (x, y) = ((end.Y - start.Y) / length, (start.X - end.X) / length);
        var best = (
            from step in Enumerable.Range(1, Places - 1)
            let anchor = start.Towards(end, (double)step / Places)
            from place in Distances
                .Take(Beyond)
                .SelectMany(off => new[] { (Off: off, X: x, Y: y), (Off: off, X: -x, Y: -y) })
                .Prepend((Off: 0, X: 0, Y: 0))
            let words = Aside(anchor, (place.X, place.Y), place.Off * letters / 10, width, height)
            let clear = words.Grown(height / 2)
            where !foreign.Exists(clear.Contains) && !taken.Exists(words.Grown(letters / 6).Meets)
            let off = place.Off == 0 ? 0 : BesideLine + (place.Off / 10.0) + LineCost(anchor, words)
            let cost = Cost(words) + (Math.Abs(step - (Places / 2)) / 2.0) + off
            where double.IsFinite(cost)
            orderby cost
            select ((Point On, Box Words)?)(anchor, words)
        ).FirstOrDefault();
        if (best is { Words: var box })
            Take(box.Grown(height / 2));
        return best;
    }

    /// <summary>Points so close that none of them slips past a letter.</summary>
    private IEnumerable<Point> Along(Point from, Point to)
    {
        var count = Math.Max(1, (int)(4 * from.DistanceTo(to) / letters));
        return Enumerable.Range(0, count + 1).Select(k => from.Towards(to, (double)k / count));
    }

    /// <summary>The nearest point of a label to what it names: where a line between them ends.</summary>
    internal static Point Nearest(Point point, Box box) =>
        new(Math.Clamp(point.X, box.Left, box.Right), Math.Clamp(point.Y, box.Top, box.Bottom));

    /// <summary>A box that starts a distance away from a point, straight or slanting.</summary>
    private static Box Aside(Point point, (double X, double Y) side, int gap, int width, int height)
    {
        // The middle lies where the way out leaves the box grown by the gap: on a rounded rectangle all round the
        // point.
        var x = point.X + Away(side.X, gap, width);
        var y = point.Y + Away(side.Y, gap, height);
        return new(x - (width / 2), y - (height / 2), x + (width / 2), y + (height / 2));
    }

    private static int Away(double share, int gap, int size) =>
        (int)Math.Round((share * gap) + (Math.Clamp(share * 1.42, -1, 1) * size / 2), MidpointRounding.AwayFromZero);

    /// <summary>The middle where the label is larger than the area.</summary>
    private static int Between(int from, int to, int step) =>
        to <= from ? (from + to) / 2 : from + (int)((long)(to - from) * step / Places);

    /// <summary>0 on the side that is wanted, 1 on the other, in heights of a letter.</summary>
    private static double Aversion((double X, double Y) side, (int X, int Y) towards)
    {
        var length = Math.Sqrt((towards.X * towards.X) + (towards.Y * towards.Y));
        return length == 0 ? 0 : (1 - (((side.X * towards.X) + (side.Y * towards.Y)) / length)) / 2;
    }

    /// <summary>The line from a point to its label should not run over other labels and corners.</summary>
    private double LineCost(Point point, Box box)
    {
        var end = Nearest(point, box);
        var count = (int)(point.DistanceTo(end) / (letters / 2.0));
        var over = 0;
        for (var k = 1; k <= count; k++)
        {
            var at = point.Towards(end, (double)k / (count + 1));
            if (taken.Any(t => t.Contains(at) && !t.Contains(point)))
                over++;
        }
        return over * 6.0;
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
