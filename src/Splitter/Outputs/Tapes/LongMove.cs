using Splitter.Tapes;

namespace Splitter.Outputs.Tapes;

/// <summary>Moves in equal pieces, none longer than a record holds.</summary>
internal static class LongMove
{
    /// <summary>
    /// The ends of the pieces, as many as the length needs and at least some; the last is where it goes.
    /// </summary>
    internal static IEnumerable<TapePoint> Stops(TapePoint from, TapePoint to, int atLeast)
    {
        var (u, v) = (to.U - from.U, to.V - from.V);
        var longest = Math.Max(Math.Abs(u), Math.Abs(v));
        var pieces = Math.Max(atLeast, (longest + TapeRecord.Longest - 1) / TapeRecord.Longest);
        for (var i = 1; i <= pieces; i++)
            yield return new(from.U + Share(u, i, pieces), from.V + Share(v, i, pieces));
    }

    /// <summary>All pieces but the last can be jumps without the machine cutting the thread.</summary>
    internal static bool LeavesThreadUncut(TapePoint from, TapePoint to) =>
        Stops(from, to, 1).Count() <= TapeRecord.TrimJumps;

    /// <summary>The ends of the pieces but for the last.</summary>
    internal static IEnumerable<TapePoint> Between(TapePoint from, TapePoint to) =>
        Math.Max(Math.Abs(to.U - from.U), Math.Abs(to.V - from.V)) <= TapeRecord.Longest
            ? []
            : Stops(from, to, 1).SkipLast(1);

    /// <summary>Rounded towards zero, so that no piece is longer than a record holds.</summary>
    private static int Share(int move, int piece, int pieces) => (int)((long)move * piece / pieces);
}
