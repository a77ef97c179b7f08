namespace Splitter.Tool;

/// <summary>What the process returns.</summary>
internal static class ExitCode
{
    /// <summary>What was asked for is done.</summary>
    internal const int Done = 0;

    /// <summary>The check found differences.</summary>
    internal const int Differences = 1;

    /// <summary>
    /// Something in the input or in the call is wrong, or the disk refused a set; a set is never half-written.
    /// </summary>
    internal const int WrongInput = 2;

    /// <summary>A defect of ours: EX_SOFTWARE of BSD's sysexits.h (value from memory).</summary>
    internal const int Defect = 70;

    /// <summary>Stopped from the keyboard: 128 and the number of SIGINT, as shells have it.</summary>
    internal const int Stopped = 130;
}
