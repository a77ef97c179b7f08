using System.Collections.Immutable;

namespace Splitter.Outputs.Pictures.Strands;

/// <summary>
/// The colours of a thread in a light: across it from its dark side, and along it down into a needle hole.
/// </summary>
internal static class StrandShades
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

    /// <summary>Those at the hole first, each time from the dark side.</summary>
    internal static ImmutableArray<Colour> Of(Colour thread, ThreadLight light)
    {
        var shades = ImmutableArray.CreateBuilder<Colour>(Across * Down);
        var ridge = 2.0 * Strand.RidgeShift / Strand.Width * light.FromSide;
        for (var down = 0; down < Down; down++)
        for (var across = 0; across < Across; across++)
        {
            var at = ((across + 0.5) * 2 / Across) - 1;
            var off = at > ridge ? (at - ridge) / (1 - ridge) : (ridge - at) / (1 + ridge);
            var colour =
                off < Plain
                    ? light.Ridge(thread).Mixed(light.Body(thread), (int)(off / Plain * 100))
                    : light.Body(thread).Mixed(light.Shade(thread), (int)((off - Plain) / (1 - Plain) * 100));
            shades.Add(colour.Mixed(light.Shade(thread), Deep * (Down - 1 - down) / (Down - 1)));
        }
        return shades.MoveToImmutable();
    }
}
