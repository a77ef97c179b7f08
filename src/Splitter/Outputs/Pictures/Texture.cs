using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>Lines that hint at how a shape is sewn: along the rows of a fill, across a satin column.</summary>
internal static class Texture
{
    /// <summary>
    /// Whole units of a direction: trigonometry is rounded at once, so that every machine draws the same.
    /// </summary>
    private const double Fine = 1_000_000;

    internal static ImmutableArray<ImmutableArray<Point>> Of(Shape shape, int spacing) =>
        shape switch
        {
            FillShape { Style.Guide: { } guide } fill => Rows(fill, guide, spacing),
            FillShape fill => Rows(fill, spacing),
            SatinShape satin => [.. satin.Columns.SelectMany(column => Rungs(column, spacing))],
            _ => [],
        };

    /// <summary>
    /// Every line keeps its distance from the drawing's origin, so that shapes of one angle share their lines.
    /// </summary>
    private static ImmutableArray<ImmutableArray<Point>> Rows(FillShape fill, int spacing)
    {
        var box = fill.Footprint.Bounds;
        if (box.IsEmpty)
            return [];
        var radians = fill.Style.Angle * Math.PI / 180;
        var (x, y) = (Math.Round(Math.Cos(radians) * Fine) / Fine, Math.Round(Math.Sin(radians) * Fine) / Fine);
        ReadOnlySpan<Point> corners =
        [
            new(box.Left, box.Top),
            new(box.Right, box.Top),
            new(box.Right, box.Bottom),
            new(box.Left, box.Bottom),
        ];
        var (least, most, from, to) = (double.MaxValue, double.MinValue, double.MaxValue, double.MinValue);
        foreach (var corner in corners)
        {
            var (across, along) = ((corner.Y * x) - (corner.X * y), (corner.X * x) + (corner.Y * y));
            (least, most) = (Math.Min(least, across), Math.Max(most, across));
            (from, to) = (Math.Min(from, along), Math.Max(to, along));
        }
        var clipping = new PathClipping(fill.Footprint);
        var lines = ImmutableArray.CreateBuilder<ImmutableArray<Point>>();
        for (var row = (int)Math.Ceiling(least / spacing); row * (double)spacing <= most; row++)
        {
            var across = row * (double)spacing;
            foreach (var line in clipping.Inside(new([On(from, across), On(to, across)])))
                lines.Add(line.Points);
        }
        return lines.ToImmutable();

        Point On(double along, double across) =>
            new((int)Math.Round((along * x) - (across * y)), (int)Math.Round((along * y) + (across * x)));
    }

    /// <summary>Along a guide.</summary>
    private static ImmutableArray<ImmutableArray<Point>> Rows(FillShape fill, Guide guide, int spacing)
    {
        var places = fill.Footprint.Rings.SelectMany(guide.Of).ToList();
        var (from, to) = (places.Min(p => p.U), places.Max(p => p.U));
        var clipping = new PathClipping(fill.Footprint);
        var lines = ImmutableArray.CreateBuilder<ImmutableArray<Point>>();
        for (var v = Math.Ceiling(places.Min(p => p.V) / spacing) * spacing; v <= places.Max(p => p.V); v += spacing)
            foreach (var line in clipping.Inside(new([.. guide.Row(v, from, to).Select(p => p.From(default))])))
                lines.Add(line.Points);
        return lines.ToImmutable();
    }

    private static IEnumerable<ImmutableArray<Point>> Rungs(Column column, int spacing)
    {
        var walked = (double)spacing;
        for (var i = 0; i < column.Rungs.Length; i++)
        {
            if (i > 0)
                walked += column.Rungs[i - 1].Middle.DistanceTo(column.Rungs[i].Middle);
            if (walked < spacing)
                continue;
            yield return [column.Rungs[i].Left, column.Rungs[i].Right];
            walked = 0;
        }
    }
}
