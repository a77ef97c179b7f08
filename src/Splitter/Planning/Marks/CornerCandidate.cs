using Splitter.Geometry;

namespace Splitter.Planning.Marks;

/// <summary>One way to lay a corner.</summary>
/// <param name="Donor">The hooping that would sew it.</param>
/// <param name="Poor">
/// How much of its arms, in millimetres, lies on stitching that is there already, or is missing.
/// </param>
/// <param name="IsThere">The donor sews it anyway, for another hooping.</param>
internal sealed record CornerCandidate(Point At, Point ArmX, Point ArmY, int Donor, int Poor, bool IsThere);
