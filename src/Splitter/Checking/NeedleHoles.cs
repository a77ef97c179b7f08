using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Checking;

/// <summary>
/// Needle holes of a part on the drawing, each counted as often as it is sewn: texts and pictures count these, since a
/// stitch that moves has two lines of thread beside it, but one hole.
/// </summary>
internal readonly record struct NeedleHoles(int Same, int New, int Gone)
{
    internal static NeedleHoles Of(ImmutableArray<SewnRun> before, ImmutableArray<SewnRun> after)
    {
        var more = new Dictionary<Point, int>();
        foreach (var point in after.SelectMany(run => run.Points))
            more[point] = more.GetValueOrDefault(point) + 1;
        foreach (var point in before.SelectMany(run => run.Points))
            more[point] = more.GetValueOrDefault(point) - 1;
        var added = more.Values.Where(n => n > 0).Sum();
        return new(after.Sum(run => run.Points.Length) - added, added, -more.Values.Where(n => n < 0).Sum());
    }
}
