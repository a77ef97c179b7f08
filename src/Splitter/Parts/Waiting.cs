using Splitter.Geometry;

namespace Splitter.Parts;

/// <summary>Blocks that are still to be sewn, each once nothing is left of what it lies over.</summary>
internal sealed class Waiting
{
    /// <summary>Of each piece.</summary>
    private readonly List<int>[] stays;

    /// <summary>How many of its stays are left.</summary>
    private readonly int[] left;

    /// <summary>The pieces that lie over it.</summary>
    private readonly List<int>[] above;

    /// <summary>How many pieces that it lies over are not sewn.</summary>
    private readonly int[] under;

    private readonly Stay[] all;
    private readonly OpenStays open;

    internal Waiting(Stay[] all, int[][] below)
    {
        (this.all, open) = (all, new(all));
        (stays, above) = ([.. below.Select(_ => new List<int>())], [.. below.Select(_ => new List<int>())]);
        foreach (var (i, stay) in all.Index())
            stays[stay.Piece].Add(i);
        left = [.. stays.Select(s => s.Count)];
        under = [.. below.Select(pieces => pieces.Count(p => left[p] > 0))];
        for (var piece = 0; piece < below.Length; piece++)
        {
            foreach (var lower in below[piece])
                above[lower].Add(piece);
            if (under[piece] == 0)
                stays[piece].ForEach(open.Open);
        }
    }

    /// <summary>How many boxes were looked at.</summary>
    internal long Looks => open.Looks;

    /// <summary>Takes the one that costs least to jump to, of equals the first; the first one from nowhere.</summary>
    internal int TakeNext(Point? needle)
    {
        var next = needle is { } from ? open.Nearest(from) : Array.FindIndex(all, stay => under[stay.Piece] == 0);
        open.Close(next);
        var piece = all[next].Piece;
        if (--left[piece] == 0)
            foreach (var upper in above[piece])
                if (--under[upper] == 0)
                    stays[upper].ForEach(open.Open);
        return next;
    }
}
