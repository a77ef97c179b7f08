using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Outputs.Templates;

/// <summary>A sheet of paper and where things stand on it, micrometres.</summary>
internal sealed record SheetForm(int Width, int Height)
{
    /// <summary>
    /// Printers for home and office leave 3 to 6 mm of a sheet's edge white (common practice, no source).
    /// </summary>
    internal const int Margin = 7 * Units.Millimetre;

    /// <summary>Above the window: what the sheet is.</summary>
    internal const int Head = 8 * Units.Millimetre;

    /// <summary>Below the window: the control rules.</summary>
    internal const int Foot = 10 * Units.Millimetre;

    /// <summary>The part of the sheet that shows work.</summary>
    internal Box Window { get; } = new(Margin, Margin + Head, Width - Margin, Height - Margin - Foot);

    internal SheetForm Across => new(Height, Width);

    internal static SheetForm Of(Paper paper) =>
        paper switch
        {
            // ISO 216.
            Paper.A4 => new(210 * Units.Millimetre, 297 * Units.Millimetre),
            // 8.5 x 11 in (ANSI/ASME Y14.1, size A).
            _ => new(Units.Inch * 17 / 2, Units.Inch * 11),
        };
}
