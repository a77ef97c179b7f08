namespace Splitter.Geometry;

/// <summary>
/// Which way a hoop lies, clockwise as seen on the drawing. Only right angles: a corner that two hoopings share then
/// has whole tape steps in both, and meets itself at 0.0 mm.
/// </summary>
internal enum Turn
{
    /// <summary>As the drawing stands.</summary>
    None = 0,

    /// <summary>A quarter turn clockwise.</summary>
    Quarter = 90,

    /// <summary>Upside down.</summary>
    Half = 180,

    /// <summary>Three quarters clockwise.</summary>
    ThreeQuarters = 270,
}
