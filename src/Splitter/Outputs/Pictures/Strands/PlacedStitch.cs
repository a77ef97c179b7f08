using Splitter.Geometry;

namespace Splitter.Outputs.Pictures.Strands;

/// <summary>A stitch on a picture, in 256ths of a pixel.</summary>
internal readonly record struct PlacedStitch(StrandInk Ink, Point From, Point To);
