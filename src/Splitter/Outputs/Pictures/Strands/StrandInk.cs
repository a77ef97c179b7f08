namespace Splitter.Outputs.Pictures.Strands;

/// <summary>
/// The colours of a thread in a light: across it from its dark side, and along it down into a needle hole.
/// </summary>
internal sealed class StrandInk
{
    /// <summary>Shades across a thread, and down into a hole.</summary>
    internal const int Across = 16,
        Down = 4;

    /// <summary>Percent of shade at the hole itself, less above it.</summary>
    private const int Deep = 30;

    /// <summary>
    /// Where between the ridge, 0, and the thread's edge, 1, it has its own colour: the ridge fades up to there.
    /// </summary>
    private const double Plain = 0.45;

    private readonly Dot[] dots = new Dot[Across * Down];

    /// <param name="number">Of the thread, from 1.</param>
    internal StrandInk(Colour thread, ThreadLight light, byte number)
    {
        Thread = number;
        var ridge = 2.0 * Strand.RidgeShift / Strand.Width * light.FromSide;
        for (var across = 0; across < Across; across++)
        {
            var at = ((across + 0.5) * 2 / Across) - 1;
            var off = at > ridge ? (at - ridge) / (1 - ridge) : (ridge - at) / (1 + ridge);
            var colour =
                off < Plain
                    ? light.Ridge(thread).Mixed(light.Body(thread), (int)(off / Plain * 100))
                    : light.Body(thread).Mixed(light.Shade(thread), (int)((off - Plain) / (1 - Plain) * 100));
            for (var down = 0; down < Down; down++)
                dots[(down * Across) + across] = new(
                    colour.Mixed(light.Shade(thread), Deep * (Down - 1 - down) / (Down - 1)),
                    number
                );
        }
    }

    /// <summary>One thread casts no shadow on itself, where parts meet neither.</summary>
    internal byte Thread { get; }

    /// <summary>Those at the hole first, each time from the dark side.</summary>
    internal ReadOnlySpan<Dot> Dots => dots;
}
