namespace Splitter.Outputs.Pictures.Strands;

/// <summary>
/// One of the dots that a pixel takes the mean of, in four bytes that are copied and added up at once.
/// </summary>
/// <param name="Bits">Red lowest, then green and blue; highest the thread.</param>
internal readonly record struct Dot(uint Bits)
{
    private const int Green = 8,
        Blue = 16,
        Highest = 24;

    /// <param name="thread">Which last touched it: it shades neither itself nor anything twice. 0 for none.</param>
    internal Dot(Colour colour, byte thread)
        : this(colour.Red | ((uint)colour.Green << Green) | ((uint)colour.Blue << Blue) | ((uint)thread << Highest)) { }

    internal byte Thread => (byte)(Bits >> Highest);

    /// <summary>In the shadow of a thread.</summary>
    internal Dot Shaded(byte by)
    {
        var shadow = Shadow;
        return new(
            shadow[(byte)Bits]
                | ((uint)shadow[(byte)(Bits >> Green)] << Green)
                | ((uint)shadow[(byte)(Bits >> Blue)] << Blue)
                | ((uint)by << Highest)
        );
    }

    /// <summary>What each shade of a channel becomes in it.</summary>
    private static readonly byte[] Shadow =
    [
        .. Enumerable.Range(0, 256).Select(shade => new Colour((byte)shade, 0, 0).Mixed(default, Strand.Shadow).Red),
    ];
}
