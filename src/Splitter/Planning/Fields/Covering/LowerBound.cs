namespace Splitter.Planning.Fields.Covering;

/// <summary>
/// A number of fields that no plan goes below, whoever lays them. All that it takes for granted is what every plan must
/// do: its fields cover the drawing, and each but the first is set by corners of others. Seams need no room here, and
/// fields that meet need share no ground as long as each shares some with another.
/// </summary>
internal static class LowerBound
{
    /// <param name="known">No plan is known to have fewer: bounds by points need not go higher.</param>
    internal static int Of(CoverTask task, int known) => Of(task, known, new(task));

    /// <param name="points">The bound by points of the task.</param>
    /// <param name="jobs">How many threads may work.</param>
    internal static int Of(CoverTask task, int known, PointBound points, int jobs = 1) =>
        Math.Max(points.WithoutRules().Of(known, jobs: jobs), Chain(task));

    /// <summary>
    /// Fields hang together, each by ground that it shares with another. So a number of them reach no further along an
    /// axis than a chain of as many does, in which each shares no more than holds a corner with the next.
    /// </summary>
    private static int Chain(CoverTask task)
    {
        if (task.Rules is not { } rules || task.Bounds.IsEmpty)
            return 0;
        var share = CommonGround.Least(rules) - (2 * task.Template.Reach);
        var grounds = task.Turns.Select(task.GroundOf).Concat(task.Fixed.Select(task.Template.Ground)).ToList();
        return Math.Max(
            Links(task.Bounds.Width, grounds.Max(g => g.Width)),
            Links(task.Bounds.Height, grounds.Max(g => g.Height))
        );

        // Fields too narrow to share as much are not set by each other: no plan has more than one.
        int Links(int length, int field) =>
            length <= field || field <= share ? 1 : (int)Math.Ceiling((length - share) / (double)(field - share));
    }
}
