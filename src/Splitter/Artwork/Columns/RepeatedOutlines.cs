using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Artwork.Columns;

/// <summary>
/// Columns of outlines of which many may be the same but for their place, as motifs are that are strewn over a ground:
/// what is found for the first of them serves the others.
/// </summary>
internal sealed class RepeatedOutlines
{
    private readonly Dictionary<(Polyline Outline, int Widest), (Point At, ImmutableArray<Column> Columns)> known = [];

    /// <summary>As <see cref="OutlineColumns.From"/> finds them.</summary>
    /// <param name="widest">Largest diameter of a disc inside the ground, µm.</param>
    internal ImmutableArray<Column> Columns(Region ground, int widest)
    {
        var at = ground.Polygons[0].Outer.Points[0];
        // How many points a ring has goes before them, so that rings which touch are not taken for one.
        var outline = new Polyline([
            .. ground.Rings.SelectMany(r => r.Points.Select(p => p - at).Prepend(new(r.Points.Length, 0))),
        ]);
        if (!known.TryGetValue((outline, widest), out var first))
            known[(outline, widest)] = first = (at, OutlineColumns.From(ground, widest));
        return first.At == at ? first.Columns : [.. first.Columns.Select(c => c.Moved(at - first.At))];
    }
}
