namespace Splitter.Geometry;

/// <summary>
/// Grounds that are laid over each other, and what each lies over. On a cell, what lies below something that knows so
/// is forgotten: it follows from that, and the effort does not grow with how many layers there are.
/// </summary>
internal sealed class CellLayers
{
    /// <summary>For each tile what lies there, and on which of its cells.</summary>
    private readonly Dictionary<Cell, List<(int Owner, ulong Cells)>> tiles = [];

    /// <summary>
    /// Whose ground lies below. What lies below one of these as well is left out, where that was known when it was
    /// laid.
    /// </summary>
    internal IEnumerable<int> Below(CellGround ground) =>
        ground
            .Tiles.SelectMany(tile =>
                tiles.GetValueOrDefault(tile.Key, []).Where(laid => (laid.Cells & tile.Value) != 0)
            )
            .Select(laid => laid.Owner);

    /// <param name="below">Those that it is known to lie over.</param>
    internal void Lay(int owner, CellGround ground, IReadOnlySet<int> below)
    {
        foreach (var (tile, cells) in ground.Tiles)
        {
            if (!tiles.TryGetValue(tile, out var laid))
                tiles.Add(tile, laid = []);
            var (own, kept) = (cells, 0);
            for (var i = 0; i < laid.Count; i++)
                if (laid[i].Owner == owner)
                    own |= laid[i].Cells;
                else if ((below.Contains(laid[i].Owner) ? laid[i].Cells & ~cells : laid[i].Cells) is var left and not 0)
                    laid[kept++] = (laid[i].Owner, left);
            laid.RemoveRange(kept, laid.Count - kept);
            laid.Add((owner, own));
        }
    }
}
