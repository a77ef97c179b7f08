namespace Splitter.Outputs.Pictures.Strands;

/// <summary>
/// One of the dots that a pixel takes the mean of: the strand that lies uppermost there, by numbers that are copied and
/// compared at once. 0 for none.
/// </summary>
/// <param name="Bits">
/// From the highest on: the layer of thread, the ink, which of its shades, and whether in the shadow of a higher layer.
/// </param>
internal readonly record struct Dot(uint Bits)
{
    /// <summary>Where in the bits the layer, the ink and its shade begin.</summary>
    internal const int Layer = 22,
        Ink = 7,
        Shade = 1;

    internal const uint InShadow = 1;

    /// <summary>Layers that are told apart, 0 for none.</summary>
    internal const int Layers = 1 << (32 - Layer);

    /// <summary>All but the layer: a colour's place among those of all inks.</summary>
    internal int Colour => (int)(Bits & ((1 << Layer) - 1));
}
