using System.Collections.Immutable;

namespace Splitter.Tapes;

/// <summary>What a tape holds: its label and its records, the end mark left off.</summary>
internal sealed record Tape(string Label, ImmutableArray<TapeRecord> Records);
