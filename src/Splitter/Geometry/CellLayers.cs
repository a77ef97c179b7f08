namespace Splitter.Geometry;

/// <summary>Grounds that are laid over each other, and what each lies over.</summary>
internal sealed class CellLayers
{
    /// <summary>For each tile what lies there, and on which of its cells.</summary>
    private readonly Dictionary<Cell, List<(int Owner, ulong Cells)>> tiles = [];

    /// <summary>Whose ground lies below.</summary>
    internal IEnumerable<int> Below(CellGround ground) =>
        ground
            .Tiles.SelectMany(tile =>
                tiles.GetValueOrDefault(tile.Key, []).Where(laid => (laid.Cells & tile.Value) != 0)
            )
            .Select(laid => laid.Owner);

    internal void Lay(int owner, CellGround ground)
    {
        foreach (var (tile, cells) in ground.Tiles)
        {
            if (!tiles.TryGetValue(tile, out var laid))
                tiles.Add(tile, laid = []);
            if (laid is [.., var last] && last.Owner == owner)
                laid[^1] = (owner, last.Cells | cells);
            else
                laid.Add((owner, cells));
        }
    }
}
