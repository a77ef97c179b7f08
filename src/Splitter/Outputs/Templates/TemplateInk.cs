using Splitter.Geometry;
using Splitter.Outputs.Pictures;

namespace Splitter.Outputs.Templates;

/// <summary>
/// Lines of templates. Office printers draw from about 0.1 mm up (common practice, no source); what is measured from is
/// no broader than it has to be to be seen.
/// </summary>
internal static class TemplateInk
{
    internal static readonly Colour Artwork = Colour.Of("#a3abb2");
    internal static readonly Colour Seam = Colour.Of("#b8530a");

    /// <summary>Of artwork and of the sheet's own signs.</summary>
    internal const int Fine = 180;

    /// <summary>Of corners, crosses, seams and fields.</summary>
    internal const int Strong = 320;

    /// <summary>Dashes and the gaps between them.</summary>
    internal const int Dash = 2 * Units.Millimetre;

    /// <summary>Ring around a corner: the arms reach far beyond it.</summary>
    internal const int Ring = 1800;

    /// <summary>Height of the names of corners and the like.</summary>
    internal const int Letters = 2800;

    /// <summary>Height of the smallest words.</summary>
    internal const int SmallLetters = 2200;

    /// <summary>Height of a part's letter on its field.</summary>
    internal const int LargeLetters = 8 * Units.Millimetre;
}
