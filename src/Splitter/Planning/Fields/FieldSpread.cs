using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Planning.Fields;

/// <summary>
/// Shares out the room that a sweep leaves at the end of its rows: neighbours then have more common ground, so that
/// corners lie further apart, and no field hangs off the cloth while others are tight.
/// </summary>
internal static class FieldSpread
{
    /// <summary>
    /// Every way to even out the rows, the most even first, the fields as they are last. Which of them still covers the
    /// drawing is for the caller to see.
    /// </summary>
    internal static IEnumerable<ImmutableArray<Field>> Ways(
        ImmutableArray<ImmutableArray<Field>> rows,
        Drawing drawing,
        FieldTemplate template,
        Box? held
    )
    {
        var cover = drawing.Bounds.Joined(held ?? Box.Empty);
        var sewn = Polygons.Union(drawing.Shapes.Select(s => s.Footprint));
        var spreadRows = rows.Select((row, i) => MovedTo(row, Top(rows, cover, template, i), template))
            .ToImmutableArray();
        yield return Flat(spreadRows.Select(row => Across(row, sewn, held, template)));
        yield return Flat(rows.Select(row => Across(row, sewn, held, template)));
        yield return Flat(spreadRows);
        yield return Flat(rows);

        static ImmutableArray<Field> Flat(IEnumerable<ImmutableArray<Field>> rows) => [.. rows.SelectMany(r => r)];
    }

    /// <summary>Where a row's ground begins when rows lie evenly between the edges of what is to be covered.</summary>
    private static int Top(ImmutableArray<ImmutableArray<Field>> rows, Box cover, FieldTemplate template, int row) =>
        Even(cover.Top, cover.Bottom, template.Ground(rows[0][0]).Height, rows.Length, row);

    private static ImmutableArray<Field> MovedTo(ImmutableArray<Field> row, int top, FieldTemplate template)
    {
        var by = new Point(0, top - template.Ground(row[0]).Top);
        return [.. row.Select(f => template.At(f.Centre + by, f.Turn))];
    }

    private static ImmutableArray<Field> Across(
        ImmutableArray<Field> row,
        Region sewn,
        Box? held,
        FieldTemplate template
    )
    {
        var grounds = row.Select(template.Ground).ToList();
        var band = Box.Around(grounds);
        var content = Polygons.Intersect(sewn, Region.Of(band)).Bounds;
        if (held is { } box && band.Contains(box))
            content = content.Joined(box);
        if (content.IsEmpty)
            return row;
        return
        [
            .. row.Select(
                (f, i) =>
                    template.At(
                        new(
                            Even(content.Left, content.Right, grounds[i].Width, row.Length, i) + (grounds[i].Width / 2),
                            f.Centre.Y
                        ),
                        f.Turn
                    )
            ),
        ];
    }

    /// <summary>The start of one of several stretches of equal length, laid evenly from edge to edge; a single one in the middle.</summary>
    private static int Even(int from, int to, int length, int count, int index)
    {
        // Half a step of the tape to spare on both sides: centres move to its grid.
        var (first, last) = (from - (Units.TapeStep / 2), to + (Units.TapeStep / 2) - length);
        return count == 1 ? (first + last) / 2 : first + (int)((long)(last - first) * index / (count - 1));
    }
}
