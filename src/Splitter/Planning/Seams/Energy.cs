using System.Collections.Immutable;

namespace Splitter.Planning.Seams;

/// <summary>
/// What a division of cells among fields costs: for every link between two cells its price when different fields sew
/// them. Prices are whole thousandths of a millimetre of plain fill.
/// </summary>
/// <param name="Allowed">For each cell the fields that may sew it; cells without any are no ground.</param>
/// <param name="Links">Pairs of neighbouring cells, the price above 0.</param>
internal sealed record Energy(ImmutableArray<ImmutableArray<int>> Allowed, ImmutableArray<CellLink> Links)
{
    internal long Of(ReadOnlySpan<int> fields)
    {
        long sum = 0;
        foreach (var link in Links)
            if (fields[link.A] != fields[link.B])
                sum += link.Price;
        return sum;
    }
}

/// <summary>Two neighbouring cells and what a seam between them costs.</summary>
internal readonly record struct CellLink(int A, int B, int Price);
