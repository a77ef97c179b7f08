using SkiaSharp;

namespace Splitter.Measures;

/// <summary>How far the thread agrees with the artwork as an independent renderer draws both.</summary>
/// <param name="Covered">Share of the drawn area that has thread.</param>
/// <param name="Spilled">Thread outside, as a share of the drawn area.</param>
/// <param name="Coloured">Share of the drawn area whose topmost thread has the colour that is drawn.</param>
public sealed record Agreement(double Covered, double Spilled, double Coloured)
{
    /// <summary>Thread up to this far outside the artwork is pull compensation, not spill, mm.</summary>
    private const double SpillDistance = 0.5;

    private const int PixelsPerMillimetre = 6;

    /// <summary>Channels may differ by this much of 255: what blends at the edge of a pixel, and a thread that stands in for a near colour.</summary>
    private const int Tolerance = 48;

    /// <summary>Compares a cloth with the drawing that it was made from.</summary>
    public static Agreement Of(SewnCloth cloth, string artwork)
    {
        var sewn = Renderer.Draw(cloth.Picture(), cloth.Width, PixelsPerMillimetre);
        var drawn = Renderer.Draw(artwork, cloth.Width, PixelsPerMillimetre);
        if ((drawn.Width, drawn.Height) != (sewn.Width, sewn.Height))
            throw new InvalidOperationException("The pictures differ in size.");
        var (thread, ground) = (sewn.Painted(), drawn.Painted());
        var near = ground.Grown((int)Math.Round(SpillDistance * PixelsPerMillimetre));
        var (area, covered, spilled, coloured) = (0, 0, 0, 0);
        for (var i = 0; i < ground.Set.Length; i++)
        {
            if (ground.Set[i])
                area++;
            if (ground.Set[i] && thread.Set[i])
                covered++;
            if (thread.Set[i] && !near.Set[i])
                spilled++;
            if (ground.Set[i] && thread.Set[i] && Alike(drawn.Pixels[i], sewn.Pixels[i]))
                coloured++;
        }
        return new((double)covered / area, (double)spilled / area, (double)coloured / area);
    }

    private static bool Alike(SKColor a, SKColor b) =>
        Math.Abs(a.Red - b.Red) <= Tolerance
        && Math.Abs(a.Green - b.Green) <= Tolerance
        && Math.Abs(a.Blue - b.Blue) <= Tolerance;
}
