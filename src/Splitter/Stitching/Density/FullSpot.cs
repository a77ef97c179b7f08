using System.Collections.Immutable;

namespace Splitter.Stitching.Density;

/// <summary>Ground where the same shapes lie over each other in more layers than cloth and needle bear.</summary>
/// <param name="Shapes">By their places in the drawing.</param>
/// <param name="Hoopings">Whose thread lies there.</param>
/// <param name="Fullest">The square with most layers.</param>
/// <param name="Layers">On that square.</param>
/// <param name="Holes">In that square.</param>
/// <param name="Squares">How many square millimetres have more than the limit.</param>
/// <param name="Excess">Layers beyond the limit, summed over these.</param>
internal sealed record FullSpot(
    ImmutableArray<int> Shapes,
    ImmutableArray<int> Hoopings,
    Square Fullest,
    double Layers,
    int Holes,
    int Squares,
    double Excess
);
