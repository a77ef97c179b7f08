namespace Splitter.Geometry;

/// <summary>How a stroke ends.</summary>
internal enum Cap
{
    Butt,
    Round,
    Square,
}
