using System.Collections.Immutable;

namespace Splitter.Planning.Seams;

/// <summary>
/// The cheapest division of cells among fields: each field in turn takes the cells that make the whole cheapest, by an
/// exact cut, until none gains (alpha-expansion: Boykov, Veksler and Zabih 2001, IEEE TPAMI 23(11):1222-1239). With two
/// fields the result is the least there is; with more, at most twice that, and on seams nearly always the least.
/// </summary>
internal static class Expansion
{
    /// <summary>Rounds over all fields: three settle most drawings; a bound of time all the same.</summary>
    private const int MostRounds = 10;

    /// <summary>Not a node of the network.</summary>
    private const int None = -1;

    /// <param name="start">For each cell a field that may sew it, or -1 where there is no ground.</param>
    internal static int[] Cheapest(Energy energy, ImmutableArray<int> start, int fieldCount)
    {
        var fields = start.ToArray();
        var links = ByField(energy, fieldCount);
        var nodes = new int[fields.Length];
        Array.Fill(nodes, None);
        var idle = 0;
        for (var turn = 0; idle < fieldCount && turn < MostRounds * fieldCount; turn++)
            idle = Expand(energy, links[turn % fieldCount], fields, nodes, turn % fieldCount) ? 0 : idle + 1;
        return fields;
    }

    /// <summary>For each field the links with a cell that it may take.</summary>
    private static CellLink[][] ByField(Energy energy, int fieldCount)
    {
        var links = new List<CellLink>[fieldCount];
        for (var i = 0; i < fieldCount; i++)
            links[i] = [];
        foreach (var link in energy.Links)
        {
            foreach (var field in energy.Allowed[link.A])
                links[field].Add(link);
            foreach (var field in energy.Allowed[link.B])
                if (!energy.Allowed[link.A].Contains(field))
                    links[field].Add(link);
        }
        return [.. links.Select(l => l.ToArray())];
    }

    /// <summary>Gives the field whatever makes the whole cheaper; false when nothing does.</summary>
    /// <param name="nodes">For each cell its node in the network; none before and after.</param>
    private static bool Expand(Energy energy, CellLink[] links, int[] fields, int[] nodes, int field)
    {
        var cells = new List<int>();
        foreach (var (a, b, _) in links)
        {
            Consider(a);
            Consider(b);
        }
        if (cells.Count == 0)
            return false;

        // On the sink's side: taken. A link's price is due when its two cells end with different fields.
        var network = new MinimumCut(cells.Count);
        foreach (var (a, b, price) in links)
        {
            var (nodeA, nodeB) = (nodes[a], nodes[b]);
            var (isA, isB) = (nodeA != None, nodeB != None);
            if (isA && isB && fields[a] == fields[b])
                network.AddLink(nodeA, nodeB, price, price);
            else if (isA && isB)
            {
                // Due unless both are taken.
                network.AddTerminals(nodeB, 0, price);
                network.AddLink(nodeA, nodeB, price, 0);
            }
            else if (isA)
                Single(nodeA, fields[a], fields[b], price);
            else if (isB)
                Single(nodeB, fields[b], fields[a], price);
        }
        network.Solve();

        long gain = 0;
        foreach (var (a, b, price) in links)
            gain += (fields[a] != fields[b] ? price : 0) - (After(a) != After(b) ? price : 0);
        for (var node = 0; node < cells.Count; node++)
        {
            if (gain > 0)
                fields[cells[node]] = After(cells[node]);
            nodes[cells[node]] = None;
        }
        return gain > 0;

        int After(int cell) => nodes[cell] != None && network.IsOnSinkSide(nodes[cell]) ? field : fields[cell];

        void Consider(int cell)
        {
            if (nodes[cell] != None || fields[cell] == field || !energy.Allowed[cell].Contains(field))
                return;
            nodes[cell] = cells.Count;
            cells.Add(cell);
        }

        void Single(int node, int own, int other, int price) =>
            network.AddTerminals(node, other == field ? 0 : price, own == other ? 0 : price);
    }
}
