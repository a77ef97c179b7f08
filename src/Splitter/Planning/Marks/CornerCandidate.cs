using Splitter.Geometry;

namespace Splitter.Planning.Marks;

/// <summary>One way to lay a corner.</summary>
/// <param name="Donor">The hooping that would sew it.</param>
/// <param name="Sewn">How many places along its arms, a millimetre apart, lie on stitching that is there already.</param>
/// <param name="IsThere">The donor sews it anyway, for another hooping.</param>
internal sealed record CornerCandidate(Point At, Point ArmX, Point ArmY, int Donor, int Sewn, bool IsThere);
