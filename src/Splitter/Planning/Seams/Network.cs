using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>All seams of a drawing.</summary>
/// <param name="Territories">For each field the ground whose cut shapes it sews; together they are all grounds.</param>
/// <param name="Owners">For each shape the field that sews it whole, or null when seams cut it.</param>
/// <param name="Seams">Where territories meet.</param>
internal sealed record Network(
    ImmutableArray<Region> Territories,
    ImmutableArray<int?> Owners,
    ImmutableArray<Seam> Seams
);
