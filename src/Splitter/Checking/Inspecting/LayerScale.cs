using System.Collections.Immutable;
using System.Globalization;
using Splitter.Outputs.Pictures;

namespace Splitter.Checking.Inspecting;

/// <summary>One colour of the scale of layers.</summary>
/// <param name="From">Layers; squares with just as many belong to the class below.</param>
internal sealed record LayerClass(double From, double? UpTo, Colour Colour)
{
    internal bool Holds(double layers) => layers > From && layers <= (UpTo ?? double.PositiveInfinity);

    internal string Text =>
        UpTo is { } most
            ? string.Create(CultureInfo.InvariantCulture, $"{From:0.#} to {most:0.#} layers")
            : string.Create(CultureInfo.InvariantCulture, $"more than {From:0.#} layers");
}

/// <summary>
/// Layers of thread as colours, from half a layer to half a layer, so that a plain fill has one colour: from pale
/// yellow over green to a blue that is nearly black, each clearly darker than the one before, so that they are told
/// apart in print without colour, and by eyes that do not tell red from green.
/// </summary>
internal static class LayerScale
{
    internal static readonly ImmutableArray<LayerClass> Classes =
    [
        new(0, 0.5, Colour.Of("#f6efb9")),
        new(0.5, 1.5, Colour.Of("#c6d48f")),
        new(1.5, 2.5, Colour.Of("#8cb98f")),
        new(2.5, 3.5, Colour.Of("#5c9b9b")),
        new(3.5, 4.5, Colour.Of("#3a6f95")),
        new(4.5, 6.5, Colour.Of("#2c4377")),
        new(6.5, null, Colour.Of("#170f33")),
    ];
}
