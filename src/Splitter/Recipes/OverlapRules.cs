using Splitter.Geometry;

namespace Splitter.Recipes;

/// <summary>How parts meet.</summary>
internal sealed record OverlapRules
{
    /// <summary>No recipe asks for more than this, micrometres: an overlap is sewn twice, and gets thick.</summary>
    internal const int Widest = 20 * Units.Millimetre;

    /// <summary>How far a cut edge runs past the seam; null sizes it from the predicted fit.</summary>
    public int? Width { get; init; }

    /// <summary>Where seams run.</summary>
    public SeamRule Seams { get; init; }

    /// <summary>How the rows of a fill end at a seam.</summary>
    public EdgeRule Edges { get; init; }
}

/// <summary>Where seams run.</summary>
internal enum SeamRule
{
    /// <summary>Where they show least.</summary>
    LeastVisible,

    /// <summary>Straight, in the middle of the common ground.</summary>
    Straight,
}

/// <summary>How the rows of a fill end at a seam.</summary>
internal enum EdgeRule
{
    /// <summary>Alternate rows reach further, so that no straight line shows.</summary>
    Interleaved,

    /// <summary>All rows reach equally far.</summary>
    Plain,
}
