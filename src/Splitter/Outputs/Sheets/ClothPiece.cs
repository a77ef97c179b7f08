using Splitter.Geometry;

namespace Splitter.Outputs.Sheets;

/// <summary>How large the cloth is cut.</summary>
internal static class ClothPiece
{
    /// <summary>Cloth beyond what is sewn on each side, µm, where the recipe does not give its size.</summary>
    private const int Margin = 50 * Units.Millimetre;

    /// <summary>
    /// Larger than that on each side before it is steamed and fused, µm, since both shrink it and pull it askew. Common
    /// practice, no source.
    /// </summary>
    private const int Shrinkage = 20 * Units.Millimetre;

    /// <summary>The recipe's, or what all fields together and the artwork ask for.</summary>
    internal static (int Width, int Height) Cut(SheetContent sheet)
    {
        if (sheet.Recipe.Cloth.Size is { } size)
            return size;
        var sewn = Box.Around(sheet.Plan.Hoopings.Select(h => h.Field.Bounds)).Joined(sheet.Drawing.Bounds);
        return (sewn.Width + (2 * Margin), sewn.Height + (2 * Margin));
    }

    /// <summary>What one begins with.</summary>
    internal static (int Width, int Height) Rough(SheetContent sheet)
    {
        var (width, height) = Cut(sheet);
        return (width + (2 * Shrinkage), height + (2 * Shrinkage));
    }
}
