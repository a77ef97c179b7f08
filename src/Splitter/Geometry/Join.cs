namespace Splitter.Geometry;

/// <summary>How an offset outline turns an outer corner, or a stroke its bends.</summary>
internal enum Join
{
    Round,
    Mitre,
    Bevel,
}
