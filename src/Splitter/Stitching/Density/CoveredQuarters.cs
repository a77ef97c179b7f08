using Splitter.Geometry;

namespace Splitter.Stitching.Density;

/// <summary>
/// The quarters that a stitch lies on with its whole width, and how much it covers of each; one may come more than
/// once. Thread is laid as lines side by side: a stitch beside a line between quarters lies on both. Counted by their
/// middles alone, one or two rows 0.4 mm apart would fall on a quarter.
/// </summary>
internal static class CoveredQuarters
{
    /// <summary>Each stands for 0.1 mm of the thread's width, a step of the tape.</summary>
    private const int Lines = 4;

    /// <param name="breadth">How wide a strip of cloth the thread counts for, µm.</param>
    /// <param name="on">A value, so that each kind of it has code of its own: all thread goes through here.</param>
    internal static void Count<T>(Point from, Point to, int breadth, T on)
        where T : struct, IQuarterCounter, allows ref struct
    {
        var way = Vector.Between(from, to);
        var length = way.Length;
        if (length == 0)
            return;
        var crossed = CrossedQuarters.Along(from, to, length);
        for (var line = 0; line < Lines; line++)
        {
            var aside = ((line + 0.5) / Lines - 0.5) * ThreadGrid.ThreadWidth / length;
            crossed.Begin(new(from.X + (int)Whole(-aside * way.Y), from.Y + (int)Whole(aside * way.X)));
            while (crossed.MoveNext())
                on.Add(crossed.Current.Quarter, Whole(crossed.Current.Length / Lines * breadth));
        }
    }

    private static long Whole(double value) => (long)Math.Round(value, MidpointRounding.AwayFromZero);
}
