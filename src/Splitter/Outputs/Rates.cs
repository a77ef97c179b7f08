using Splitter.Recipes;

namespace Splitter.Outputs;

/// <summary>What time and thread a part takes.</summary>
internal static class Rates
{
    private const double Minute = 60;

    /// <summary>At the machine, hooping not included.</summary>
    internal static double Minutes(Machine machine, int stitches, int stops, int trims) =>
        ((double)stitches / machine.Speed) + (((stops * machine.Stop) + (trims * machine.Trim)) / Minute);

    /// <summary>So many hoopings.</summary>
    internal static double HoopingMinutes(Machine machine, int hoopings) => hoopings * machine.Hooping / Minute;

    /// <summary>Thread for tails and breaks beside what is sewn. Handbook practice: 10 to 20 %.</summary>
    internal const double ThreadWaste = 0.15;

    /// <summary>
    /// Bobbin thread for a length of needle thread. Common practice, no source: a third to a half, since the needle
    /// thread of embroidery is drawn to the underside; the half, so that nobody runs out.
    /// </summary>
    internal const double BobbinShare = 0.5;

    /// <summary>
    /// Needle thread of one stitch, micrometres. Stitch type 301 of ISO 4915 (lockstitch): the stitch's length on the
    /// cloth, and once through the cloth (half way down and up again).
    /// </summary>
    internal static double NeedleThread(double length, int clothThickness) => length + clothThickness;
}
