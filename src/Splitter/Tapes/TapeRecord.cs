using Splitter.Geometry;

namespace Splitter.Tapes;

/// <summary>What the machine does with one record of a tape.</summary>
internal enum TapeCommand
{
    /// <summary>Moves, then the needle goes down.</summary>
    Stitch,

    /// <summary>Moves without sewing.</summary>
    Jump,

    /// <summary>Stops for the person: a colour change.</summary>
    Stop,
}

/// <summary>
/// One record of a tape: a move in steps of 0.1 mm, u right and v up, and what the machine does there.
/// </summary>
internal readonly record struct TapeRecord(TapeCommand Command, int U, int V)
{
    /// <summary>The longest move of one record each way, steps of 0.1 mm: 81 + 27 + 9 + 3 + 1.</summary>
    internal const int Longest = 121;

    /// <summary>
    /// Jumps in a row that make the machine cut the thread. Common practice, no source: some machines count two or
    /// five.
    /// </summary>
    internal const int TrimJumps = 3;

    /// <summary>
    /// A move between two holes, µm, that needs no more records than jumps cut the thread: the last is the stitch.
    /// </summary>
    internal static bool CanBeLoose(Point from, Point to) =>
        Math.Max(Math.Abs(to.X - from.X), Math.Abs(to.Y - from.Y)) <= TrimJumps * Longest * Units.TapeStep;
}
