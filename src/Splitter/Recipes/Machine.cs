namespace Splitter.Recipes;

/// <summary>
/// How long things take at the machine and beside it, for estimates. Defaults: common practice, no source.
/// </summary>
internal sealed record Machine
{
    /// <summary>Stitches a minute: 600 to 800 are usual.</summary>
    public int Speed { get; init; } = 700;

    /// <summary>Seconds lost at a stop, with a change of thread: 1 to 2 minutes.</summary>
    public int Stop { get; init; } = 90;

    /// <summary>Seconds lost at a trim: 6 to 8.</summary>
    public int Trim { get; init; } = 7;

    /// <summary>Seconds that one hooping takes: stabilizer in the hoop, tacks, cloth set and smoothed down.</summary>
    public int Hooping { get; init; } = 15 * 60;
}
