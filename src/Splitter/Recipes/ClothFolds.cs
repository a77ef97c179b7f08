namespace Splitter.Recipes;

/// <summary>The folds of the cloth; a null is none.</summary>
internal sealed record ClothFolds(FoldAt? Upright, FoldAt? Level);

/// <summary>Where a fold lies along a side of the cloth.</summary>
/// <param name="Distance">From the side's start or end; null for its middle.</param>
internal sealed record FoldAt(int? Distance, bool FromEnd)
{
    /// <summary>Its distance from the start of a side of that length.</summary>
    internal int On(int side) =>
        Distance is not { } d ? side / 2
        : FromEnd ? side - d
        : d;
}
