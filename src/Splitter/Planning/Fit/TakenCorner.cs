using Splitter.Geometry;

namespace Splitter.Planning.Fit;

/// <summary>A corner that a hooping is set by.</summary>
/// <param name="Donor">Place in the sewing order of the hooping that sews it.</param>
internal readonly record struct TakenCorner(Point At, int Donor);
