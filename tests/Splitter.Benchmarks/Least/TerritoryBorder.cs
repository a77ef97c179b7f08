using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning.Seams;

namespace Splitter.Benchmarks.Least;

/// <summary>Half of what the border of one field's territory with all others shows at least.</summary>
internal sealed class TerritoryBorder
{
    /// <summary>The other half is the neighbour's.</summary>
    private const double Half = 0.5;

    /// <summary>Places of a line that are looked at between two of its nodes.</summary>
    private const int Looks = 4;

    private readonly Drawing drawing;
    private readonly Wholeness wholeness;
    private readonly LeastPrice price;
    private readonly Lattice lattice;
    private readonly int field;
    private readonly BorderCut cut;

    /// <summary>Nodes of the places of the lattice.</summary>
    private readonly int[] places;

    /// <summary>Nodes of the shapes; those of shapes that are cut are not asked for.</summary>
    private readonly int[] shapes;

    internal TerritoryBorder(Drawing drawing, Wholeness wholeness, LeastPrice price, Lattice lattice, int field)
    {
        (this.drawing, this.wholeness, this.price, this.lattice, this.field) = (
            drawing,
            wholeness,
            price,
            lattice,
            field
        );
        cut = new(field);
        places = [.. Enumerable.Range(0, lattice.Count).Select(place => cut.Add(lattice.FieldsAt(place)))];
        shapes = [.. wholeness.Fields.Select(cut.Add)];
    }

    /// <summary>Millimetres of plain fill.</summary>
    internal double Least()
    {
        Lengths();
        Layers();
        foreach (var shape in Near().Where(wholeness.IsCut))
        foreach (var line in Planning.Seams.Lines.Of(drawing.Shapes[shape]))
            Crossings(line, shape);
        return cut.Least();
    }

    private IEnumerable<int> Near() =>
        Enumerable.Range(0, drawing.Shapes.Length).Where(s => drawing.Shapes[s].Footprint.Bounds.Meets(lattice.Bounds));

    /// <summary>A link costs the least of all prices along it, wherever on it the border passes.</summary>
    private void Lengths()
    {
        var prices = new FinePrices(lattice, price);
        for (var a = 0; a < places.Length; a++)
            foreach (var (dx, dy, weight) in Crofton.Links)
            {
                var (column, row) = ((a % lattice.Columns) + dx, (a / lattice.Columns) + dy);
                var b = (row * lattice.Columns) + column;
                if (column < 0 || column >= lattice.Columns || b >= places.Length)
                    continue;
                // Beyond all grounds there is nothing to show.
                if ((places[a] < 0 && places[b] < 0 && places[a] == places[b]) || IsBeyond(a) || IsBeyond(b))
                    continue;
                var cost = prices.LeastBetween(a, dx, dy) * weight * lattice.Step / Units.Millimetre * Half;
                if (cost > 0)
                    cut.Link(places[a], places[b], cost, cost);
            }

        bool IsBeyond(int place) => lattice.FieldsAt(place).Length == 0;
    }

    /// <summary>Where a shape that stays whole lies over another shape, or under one.</summary>
    private void Layers()
    {
        var layers = new List<int>?[places.Length];
        foreach (var shape in Near())
            Scan.Cover(
                drawing.Shapes[shape].Footprint,
                lattice.X,
                lattice.Y,
                (row, from, to) =>
                {
                    for (var column = from; column <= to; column++)
                        (layers[(row * lattice.Columns) + column] ??= []).Add(shape);
                }
            );
        var area = lattice.Step * (double)lattice.Step / Units.SquareMillimetre;
        for (var place = 0; place < places.Length; place++)
            if (layers[place] is { Count: > 1 } here && lattice.FieldsAt(place).Length > 0)
                for (var upper = 1; upper < here.Count; upper++)
                for (var lower = 0; lower < upper; lower++)
                    if (!wholeness.IsCut(here[upper]) || !wholeness.IsCut(here[lower]))
                        Layer(here[upper], here[lower], place, area * SeamPrice.Turned * Half);
    }

    /// <summary>
    /// The upper shape is sewn before the lower one if the field sews it and any other field that may sew the lower one
    /// comes later, or if the field sews the lower one and any other comes earlier.
    /// </summary>
    private void Layer(int upper, int lower, int place, double cost)
    {
        var (above, below) = (NodeOf(upper), NodeOf(lower));
        var there = below.Fields.All(f => f >= field) ? cost : 0;
        var back = above.Fields.All(f => f <= field) ? cost : 0;
        if (there + back > 0)
            cut.Link(above.Node, below.Node, there, back);

        (int Node, int[] Fields) NodeOf(int shape) =>
            wholeness.IsCut(shape)
                ? (places[place], lattice.FieldsAt(place))
                : (shapes[shape], wholeness.Fields[shape]);
    }

    /// <summary>
    /// A line is crossed somewhere between ground of this field alone and ground that it does not hold; where something
    /// lies over the line, a seam crosses it unseen.
    /// </summary>
    private void Crossings(Polyline line, int shape)
    {
        var before = (At: line.Points[0], Node: cut.Add(lattice.FieldsAt(line.Points[0])));
        for (var i = 1; i < line.Points.Length; i++)
        {
            var (from, to) = (line.Points[i - 1], line.Points[i]);
            var parts = Math.Max(1, (int)Math.Ceiling(from.DistanceTo(to) / lattice.Step));
            for (var k = 1; k <= parts; k++)
            {
                var at = from.Towards(to, (double)k / parts);
                var node = cut.Add(lattice.FieldsAt(at));
                if (!IsHidden(before.At, at))
                    cut.Link(before.Node, node, SeamPrice.LineCrossing * Half, SeamPrice.LineCrossing * Half);
                before = (at, node);
            }
        }

        bool IsHidden(Point from, Point to) =>
            Enumerable.Range(0, Looks + 1).Any(k => price.Hides(shape, from.Towards(to, (double)k / Looks)));
    }
}
