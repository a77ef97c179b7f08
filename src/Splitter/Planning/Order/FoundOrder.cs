using System.Collections.Immutable;

namespace Splitter.Planning.Order;

/// <summary>An order that a search has found.</summary>
/// <param name="Fields">For each place its field.</param>
/// <param name="Donors">For each place the fields that it takes corners from.</param>
internal sealed record FoundOrder(ImmutableArray<int> Fields, ImmutableArray<ImmutableArray<int>> Donors, Score Score)
{
    internal static FoundOrder Of(PartialOrder order) => new([.. order.Order], [.. order.Donors], order.Score);
}
