using System.Collections.Immutable;

namespace Splitter.Tapes;

/// <summary>What a tape holds: its label and its records, the end mark left off.</summary>
internal sealed record Tape(string Label, ImmutableArray<TapeRecord> Records)
{
    /// <summary>
    /// Numbers of records, from 1 and rising, that hold nothing and are passed over; the others have numbers between.
    /// </summary>
    internal ImmutableArray<int> Blank { get; init; } = [];
}
