using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning.Seams;
using Splitter.Recipes;

namespace Splitter.Planning.Marks;

/// <summary>
/// Places alignment stitches where a person can judge them: where the seam to earlier work crosses a line, a satin
/// column or the edge of a fill, and not amid a fill, where one place looks like the next. They lie far apart, so that
/// a turn shows; where there are too few such places, on corners.
/// </summary>
internal static class AlignmentPlacer
{
    /// <summary>More crosses than this take longer to look at than they tell.</summary>
    private const int Most = 3;

    /// <summary>With two places a turn shows, not only a shift.</summary>
    private const int Fewest = 2;

    /// <summary>
    /// Two crosses nearer than this, µm, show no turn: by a degree they differ by 0.5 mm, as much as one sees. Common
    /// practice, no source.
    /// </summary>
    private const int Apart = 30 * Units.Millimetre;

    internal static ImmutableArray<AlignmentStitch> Place(
        Recipe recipe,
        Drawing drawing,
        Layout layout,
        Division division,
        ImmutableArray<Corner> corners,
        int hooping
    )
    {
        if (!recipe.Registration.Alignment || hooping == 0)
            return [];
        var room = layout.Fields[hooping].Usable.Grown(-AlignmentStitch.Arm);
        // Where one seam ends on another no shape does.
        var junctions = division.Seams.SelectMany(s => new[] { s.Line.Points[0], s.Line.Points[^1] }).ToHashSet();
        var atSeams =
            from crossing in division.Crossings
            where crossing.Later == hooping
            let shape = drawing.Shapes[crossing.Shape]
            from at in shape is FillShape ? Edges(crossing.Line, junctions) : [Middle(crossing.Line)]
            select new AlignmentStitch(at.OnTape(), crossing.Earlier, shape.Id);
        var onCorners =
            from corner in corners
            where corner.Receivers.Contains(hooping)
            select new AlignmentStitch(corner.At, corner.Donor, corner.Id);
        var sewn = new SewnEdges(drawing, division);
        var chosen = Spread([], [.. atSeams.Where(a => room.Contains(a.At))], Most, sewn.Has);
        return Spread(chosen, [.. onCorners.Where(a => room.Contains(a.At))], Fewest, _ => true);
    }

    /// <summary>
    /// Adds what lies farthest from all that is there, until there are so many or none lies far enough.
    /// </summary>
    /// <param name="found">
    /// A person will find there what the cross should meet; it is asked only of what would be added.
    /// </param>
    private static ImmutableArray<AlignmentStitch> Spread(
        ImmutableArray<AlignmentStitch> chosen,
        ImmutableArray<AlignmentStitch> places,
        int count,
        Func<AlignmentStitch, bool> found
    )
    {
        if (places.IsEmpty)
            return chosen;
        var middle = Box.Around(places.Select(p => p.At)).Centre;
        while (chosen.Length < count)
        {
            var next = places
                .OrderByDescending(p =>
                    chosen.IsEmpty ? p.At.DistanceTo(middle) : chosen.Min(c => c.At.DistanceTo(p.At))
                )
                .ThenBy(p => p.At)
                .FirstOrDefault(p => IsApart(p, chosen) && found(p));
            if (next is null)
                break;
            chosen = chosen.Add(next);
        }
        return chosen;
    }

    private static bool IsApart(AlignmentStitch place, ImmutableArray<AlignmentStitch> chosen) =>
        chosen.All(c => c.At.DistanceTo(place.At) >= Apart);

    private static IEnumerable<Point> Edges(Polyline line, HashSet<Point> junctions) =>
        new[] { line.Points[0], line.Points[^1] }.Where(p => !junctions.Contains(p));

    private static Point Middle(Polyline line)
    {
        var rest = line.Length / 2;
        for (var i = 1; ; i++)
        {
            var step = line.Points[i - 1].DistanceTo(line.Points[i]);
            if (rest <= step)
                return line.Points[i - 1].Towards(line.Points[i], step == 0 ? 0 : rest / step);
            rest -= step;
        }
    }
}
