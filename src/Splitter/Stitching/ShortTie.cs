using System.Collections.Immutable;

namespace Splitter.Stitching;

/// <summary>
/// A tie that brings no thread to the cloth: the first or last stitches of the path itself are short ones, and nothing
/// is sewn back over them.
/// </summary>
internal static class ShortTie
{
    /// <summary>How many they are. Common practice, no source: three to five.</summary>
    internal const int Count = 4;

    /// <summary>
    /// Their length, µm; a longer one goes to a hole of the path. Common practice, no source: 0.4 to 0.8 mm.
    /// </summary>
    internal const int Length = 500;

    /// <summary>A block that is tied where it begins, tied so instead; null where its path is too short.</summary>
    internal static Block? AtStart(Block block) =>
        With(block with { IsShortTied = block.IsShortTied with { Start = true } }, Begun(Ties.FromStart(block)));

    /// <summary>The same where it ends.</summary>
    internal static Block? AtEnd(Block block) =>
        With(
            block with
            {
                IsShortTied = block.IsShortTied with { End = true },
            },
            Begun(Backwards(Ties.UpToEnd(block))) is { } begun ? Backwards(begun) : null
        );

    /// <summary>
    /// What is not of such ties, by the numbers of its first hole and of the one after its last: these two are where a
    /// tie ends or begins, and stay too. Nothing where both ties meet.
    /// </summary>
    internal static (int First, int End) Rest(Block block)
    {
        var first = block.IsShortTied.Start ? Count : 0;
        return (first, Math.Max(first, block.Stitches.Length - (block.IsShortTied.End ? Count : 0)));
    }

    private static Block? With(Block block, ImmutableArray<Stitch>? stitches) =>
        stitches is { } all ? block with { Stitches = all } : null;

    /// <summary>The first stitches of a path divided.</summary>
    private static ImmutableArray<Stitch>? Begun(ImmutableArray<Stitch> path)
    {
        var begun = ImmutableArray.CreateBuilder<Stitch>(path.Length + Count);
        begun.Add(path[0]);
        var next = 1;
        for (var away = Length; begun.Count <= Count; )
        {
            if (next == path.Length || path[next].Use == StitchUse.Tie)
                return null;
            var at = Ties.Beside(path[next - 1].At, path[next].At, away);
            begun.Add(path[next] with { At = at });
            (next, away) = at == path[next].At ? (next + 1, Length) : (next, away + Length);
        }
        begun.AddRange(path.AsSpan()[next..]);
        return begun.ToImmutable();
    }

    /// <summary>The path from its other end: each hole with what the stitch before it is for.</summary>
    private static ImmutableArray<Stitch> Backwards(ImmutableArray<Stitch> path) =>
        [.. Enumerable.Range(1, path.Length).Select(i => path[^i] with { Use = path[^Math.Max(1, i - 1)].Use })];
}
