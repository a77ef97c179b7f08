using System.Collections.Immutable;
using Splitter.Artwork.Tapes;

namespace Splitter.Cutting.Tapes;

/// <summary>
/// How the threads of a part begin and end. Where the tape's own order goes on, everything is as it was; where a seam or
/// another part has come between, the thread is cut, and tied unless the tape did that there itself.
/// </summary>
/// <param name="original">All of the tape, by their numbers.</param>
internal sealed class ThreadEnds(ImmutableArray<OriginalThread> original)
{
    /// <param name="pieces">Of one hooping, in sewing order.</param>
    internal IEnumerable<KeptPiece> Settle(List<KeptPiece> pieces)
    {
        KeptThread? last = null;
        var threads = pieces.SelectMany(p => p.Threads).ToArray();
        for (var i = 0; i < threads.Length; i++)
        {
            var next = i + 1 < threads.Length ? threads[i + 1] : null;
            threads[i] = threads[i] with
            {
                IsCutBefore = GoOn(last, threads[i])
                    ? original[threads[i].Number].Start switch
                    {
                        ThreadArrival.Cut => true,
                        ThreadArrival.Loose => false,
                        _ => null,
                    }
                    : null,
                IsTied = (
                    !GoOn(last, threads[i]) && !(threads[i].IsWhole.Starts && IsCut(threads[i].Number)),
                    !GoOn(threads[i], next) && !(threads[i].IsWhole.Ends && IsCut(threads[i].Number + 1))
                ),
            };
            last = threads[i];
        }
        var at = 0;
        foreach (var piece in pieces)
        {
            yield return piece with
            {
                Threads = [.. threads.AsSpan(at, piece.Threads.Length)],
            };
            at += piece.Threads.Length;
        }
    }

    private bool GoOn(KeptThread? one, KeptThread? other) =>
        one is { IsWhole.Ends: true }
        && other is { IsWhole.Starts: true }
        && one.Number + 1 == other.Number
        && original[one.Number].Block == original[other.Number].Block;

    /// <summary>The thread was cut before one began, or there is none.</summary>
    private bool IsCut(int number) => number >= original.Length || original[number].Start == ThreadArrival.Cut;
}
