using Splitter.Planning.Seams;
using Splitter.Recipes;

namespace Splitter.Planning.Fit;

/// <summary>
/// A misfit and what covers it as they are told: rounded once, and against the plan, so that every table, picture and
/// warning shows the very figures by which a join is judged.
/// </summary>
internal static class JoinFit
{
    /// <summary>
    /// Figures are told in whole steps of this, µm: two decimals of a millimetre, finer than any of them is known.
    /// </summary>
    private const int Step = 10;

    /// <summary>
    /// Decimals of a micrometre that every machine agrees on: sine, logarithm and exponential differ in their last
    /// digits, and a misfit that is a whole step on one machine must not be a hair more, and so a step more, on
    /// another.
    /// </summary>
    private const int AgreedDigits = 2;

    /// <summary>A misfit, µm: rounded up.</summary>
    internal static int Misfit(double misfit) => (int)Math.Ceiling(Math.Round(misfit, AgreedDigits) / Step) * Step;

    /// <summary>
    /// How far the rows of both sides lie over each other at least, µm, rounded down: those that reach less, and where
    /// the seam runs up to the edge of a field, what that leaves of them. Where three parts come out in a circle of
    /// this diameter and only one of them is short of room by m, there is a place within reach of all: the circle's
    /// middle, moved towards that part by m/2, is no more than m/2 further from the others.
    /// </summary>
    /// <param name="rooms">All along the seam.</param>
    internal static int Covered(int overlap, IEnumerable<SideRoom> rooms, EdgeRule edges)
    {
        var reach = Overlaps.Short(overlap, edges);
        return (int)Math.Round(rooms.Min(r => Math.Min(reach, r.Narrower) + Math.Min(reach, r.Wider))) / Step * Step;
    }
}
