using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning.Seams;
using Splitter.Recipes;

namespace Splitter.Planning.Marks;

/// <summary>
/// Places alignment stitches: in the middle of where a cut shape crosses the seam to earlier work, where the misfit would
/// show; and on corners, when fewer places than two meet sewn work.
/// </summary>
internal static class AlignmentPlacer
{
    /// <summary>More crosses than this take longer to look at than they tell.</summary>
    private const int Most = 3;

    /// <summary>With two places a turn shows, not only a shift.</summary>
    private const int Fewest = 2;

    internal static ImmutableArray<AlignmentStitch> Place(
        Recipe recipe,
        Drawing drawing,
        Layout layout,
        Division division,
        ImmutableArray<Corner> corners,
        ImmutableArray<PartJoin> joins,
        int hooping
    )
    {
        if (!recipe.Registration.Alignment || hooping == 0)
            return [];
        var room = layout.Fields[hooping].Usable.Grown(-AlignmentStitch.Arm);
        var atSeams = joins
            .Where(j => j.Later == hooping)
            .OrderByDescending(j => j.PredictedError)
            .ThenBy(j => j.Earlier)
            .Select(j => Longest(division, j))
            .Select(c => new AlignmentStitch(Middle(c.Line).OnTape(), c.Earlier, drawing.Shapes[c.Shape].Id))
            .Where(a => room.Contains(a.At))
            .Take(Most)
            .ToList();
        var onCorners = corners
            .Where(c => c.Receivers.Contains(hooping))
            .Select(c => new AlignmentStitch(c.At, c.Donor, c.Id))
            .Where(a => room.Contains(a.At))
            .Take(Math.Max(0, Fewest - atSeams.Count));
        return [.. atSeams, .. onCorners];
    }

    private static Crossing Longest(Division division, PartJoin join) =>
        division
            .Crossings.Where(c => c.Earlier == join.Earlier && c.Later == join.Later)
            .OrderByDescending(c => c.Line.Length)
            .ThenBy(c => c.Shape)
            .First();

    private static Point Middle(Polyline line)
    {
        var rest = line.Length / 2;
        for (var i = 1; ; i++)
        {
            var step = line.Points[i - 1].DistanceTo(line.Points[i]);
            if (rest <= step || i == line.Points.Length - 1)
                return line.Points[i - 1].Towards(line.Points[i], step == 0 ? 0 : Math.Min(1, rest / step));
            rest -= step;
        }
    }
}
