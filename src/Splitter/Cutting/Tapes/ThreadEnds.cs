using Splitter.Artwork.Tapes;
using Splitter.Tapes;

namespace Splitter.Cutting.Tapes;

/// <summary>
/// How the threads of a part begin and end. Where the tape's own order goes on, everything is as it was; where a seam
/// or another part has come between, the thread is cut, and tied unless the tape did that there itself.
/// </summary>
/// <param name="threads">All of the tape but what is left out.</param>
internal sealed class ThreadEnds(IEnumerable<OriginalThread> threads)
{
    private readonly Dictionary<int, OriginalThread> original = threads.ToDictionary(t => t.Number);
    private readonly int lastNumber = threads.Max(t => t.Number);

    /// <param name="pieces">Of one hooping, in sewing order.</param>
    internal IEnumerable<KeptPiece> Settle(List<KeptPiece> pieces)
    {
        KeptThread? last = null;
        var kept = pieces.SelectMany(p => p.Threads).ToArray();
        for (var i = 0; i < kept.Length; i++)
        {
            var next = i + 1 < kept.Length ? kept[i + 1] : null;
            kept[i] = kept[i] with
            {
                IsCutBefore = GoOn(last, kept[i])
                    ? original[kept[i].Number].Start switch
                    {
                        ThreadArrival.Cut => true,
                        ThreadArrival.Loose => false,
                        _ => null,
                    }
                    : null,
                IsTied = (
                    !GoOn(last, kept[i]) && !(kept[i].IsWhole.Starts && IsCut(kept[i].Number)),
                    !GoOn(kept[i], next) && !(kept[i].IsWhole.Ends && IsCut(kept[i].Number + 1))
                ),
            };
            last = kept[i];
        }
        var at = 0;
        foreach (var piece in pieces)
        {
            yield return piece with
            {
                Threads = [.. kept.AsSpan(at, piece.Threads.Length)],
            };
            at += piece.Threads.Length;
        }
    }

    private bool GoOn(KeptThread? one, KeptThread? other) =>
        one is { IsWhole.Ends: true }
        && other is { IsWhole.Starts: true }
        && one.Number + 1 == other.Number
        && original[one.Number].Block == original[other.Number].Block
        && (
            // One that got longer, where a tape is made wider, is cut.
            original[other.Number].Start != ThreadArrival.Loose
            || TapeRecord.CanBeLoose(one.Stitches[^1].At, other.Stitches[0].At)
        );

    /// <summary>
    /// The tape itself cuts the thread before one begins, or ends. Before one that is left out, who knows: a tie more
    /// is no harm.
    /// </summary>
    private bool IsCut(int number) =>
        original.TryGetValue(number, out var thread) ? thread.Start == ThreadArrival.Cut : number > lastNumber;
}
