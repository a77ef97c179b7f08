using System.Collections.Immutable;

namespace Splitter.Planning.Order;

/// <summary>The order in which fields are sewn, and which sewn ones give each its corners.</summary>
/// <param name="Order">For each place in the order the index of the field.</param>
/// <param name="Donors">For each place in the order the places of its donors, ascending; none for the first.</param>
internal sealed record Sequence(ImmutableArray<int> Order, ImmutableArray<ImmutableArray<int>> Donors);
