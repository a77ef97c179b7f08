using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Tests.Artwork.Columns;

/// <summary>The ground of columns: what their quadrilaterals cover.</summary>
internal static class ColumnGround
{
    internal static Region Of(IEnumerable<Column> columns) =>
        Polygons.Union(
            columns.SelectMany(column =>
                column
                    .Rungs.Zip(column.Rungs.Skip(1))
                    .Select(pair =>
                        Polygons.FromRings(
                            [new Ring([pair.First.Left, pair.Second.Left, pair.Second.Right, pair.First.Right])],
                            FillRule.NonZero
                        )
                    )
            )
        );
}
