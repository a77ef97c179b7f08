using System.Collections.Immutable;

namespace Splitter.Stitching.Density;

/// <summary>
/// Squares that touch, each with more layers of thread or more needle holes than cloth and needle bear.
/// </summary>
/// <param name="Shapes">Whose thread lies there, by their places in the drawing.</param>
/// <param name="Hoopings">Who sews it.</param>
internal sealed record DenseSpot(ImmutableArray<int> Shapes, ImmutableArray<int> Hoopings)
{
    /// <summary>All of it, in quarters of a square millimetre.</summary>
    internal required int Quarters { get; init; }

    /// <summary>
    /// Why, for each quarter below a square that has more layers than the limit; none where holes alone are too many.
    /// </summary>
    internal required ImmutableArray<LayerCause> Causes { get; init; }

    /// <summary>How many quarters lie below squares that have more layers than the limit.</summary>
    internal int Full => Causes.Length;

    /// <summary>The square with most layers.</summary>
    internal required Square Fullest { get; init; }

    /// <summary>On that square.</summary>
    internal required double Layers { get; init; }

    /// <summary>How many quarters lie below squares that have more needle holes than the limit.</summary>
    internal required int Pierced { get; init; }

    /// <summary>The square with most needle holes.</summary>
    internal required Square MostPierced { get; init; }

    /// <summary>In that square.</summary>
    internal required int Holes { get; init; }

    /// <summary>Where it is worst: most layers, or most holes where these alone are too many.</summary>
    internal Square Worst => Full > 0 ? Fullest : MostPierced;
}
