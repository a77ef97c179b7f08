namespace Splitter.Benchmarks;

/// <summary>
/// A linear congruential generator (Numerical Recipes, 2nd edition 1992, chapter 7.1; from memory), so that every machine
/// makes the same drawings.
/// </summary>
internal sealed class Dice
{
    private uint state = 1;

    /// <summary>A whole number from 0 up to, and without, a bound.</summary>
    internal uint Next(uint below)
    {
        state = (1664525 * state) + 1013904223;
        return (uint)((ulong)state * below >> 32);
    }
}
