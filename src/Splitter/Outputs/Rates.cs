namespace Splitter.Outputs;

/// <summary>What time and thread a part takes.</summary>
internal static class Rates
{
    /// <summary>Stitches a minute. Common practice, no source: 600 to 800.</summary>
    private const double StitchesPerMinute = 700;

    /// <summary>Minutes lost at a stop, with a change of thread. Common practice, no source: 1 to 2 minutes.</summary>
    private const double MinutesPerStop = 90 / 60.0;

    /// <summary>Minutes lost at a trim. Common practice, no source: 6 to 8 seconds.</summary>
    private const double MinutesPerTrim = 7 / 60.0;

    /// <summary>At the machine, mounting the cloth not included.</summary>
    internal static double Minutes(int stitches, int stops, int trims) =>
        (stitches / StitchesPerMinute) + (stops * MinutesPerStop) + (trims * MinutesPerTrim);

    /// <summary>Thread for tails and breaks beside what is sewn. Handbook practice: 10 to 20 %.</summary>
    internal const double ThreadWaste = 0.15;

    /// <summary>
    /// Needle thread of one stitch, micrometres. Stitch type 301 of ISO 4915 (lockstitch): the stitch's length on the
    /// cloth, and once through the cloth (half way down and up again).
    /// </summary>
    internal static double NeedleThread(double length, int clothThickness) => length + clothThickness;
}
