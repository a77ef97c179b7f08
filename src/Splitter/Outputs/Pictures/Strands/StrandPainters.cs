using System.Collections.Concurrent;

namespace Splitter.Outputs.Pictures.Strands;

/// <summary>
/// Painters that wait for the next picture: its band needs no room of its own, and most of its stitches are known.
/// </summary>
internal sealed class StrandPainters
{
    private readonly ConcurrentDictionary<StrandBand, ConcurrentBag<StrandPainter>> idle = [];

    /// <summary>For one picture, and for one thread of work.</summary>
    internal StrandPainter Take(StrandBand band) =>
        idle.TryGetValue(band, out var painters) && painters.TryTake(out var painter) ? painter : new(band);

    internal void Return(StrandPainter painter) => idle.GetOrAdd(painter.Band, _ => []).Add(painter);
}
