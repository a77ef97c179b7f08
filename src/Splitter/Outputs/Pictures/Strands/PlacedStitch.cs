using Splitter.Geometry;

namespace Splitter.Outputs.Pictures.Strands;

/// <summary>A stitch on a picture, in 256ths of a dot.</summary>
/// <param name="Strand">Its first shade.</param>
internal readonly record struct PlacedStitch(Dot Strand, Point From, Point To);
