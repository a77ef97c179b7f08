using System.Globalization;
using System.Text;
using Splitter.Artwork;
using Splitter.Geometry;
using Point = Splitter.Geometry.Point;

namespace Splitter.Tests.Artwork.Columns;

/// <summary>Outlines for the tests of columns, and pictures of what becomes of them.</summary>
internal static class OutlineSamples
{
    /// <summary>Distance of stitches in pictures, µm.</summary>
    private const double Stitch = 600;

    /// <summary>Rings as lists of "x y" in millimetres, comma between points, filled even-odd.</summary>
    internal static Region Of(params string[] rings) =>
        Polygons.FromRings(rings.Select(r => new Ring([.. r.Split(',').Select(ToPoint)])), FillRule.EvenOdd);

    /// <summary>A ring through points given by angle in turns.</summary>
    internal static Ring Around(int count, Func<double, (double X, double Y)> at) =>
        new([
            .. Enumerable
                .Range(0, count)
                .Select(i => at((double)i / count))
                .Select(p => Point.FromMillimetres(p.X, p.Y))
                .Distinct(),
        ]);

    internal static Ring Circle(double x, double y, double radius, int count = 120) =>
        Around(count, t => (x + (radius * Math.Cos(t * Math.Tau)), y + (radius * Math.Sin(t * Math.Tau))));

    internal static Region Star(double outer, double inner, int points) =>
        Polygons.FromRings(
            [
                Around(
                    2 * points,
                    t =>
                    {
                        var radius = (int)Math.Round(t * 2 * points) % 2 == 0 ? outer : inner;
                        return (radius * Math.Sin(t * Math.Tau), -radius * Math.Cos(t * Math.Tau));
                    }
                ),
            ],
            FillRule.NonZero
        );

    /// <summary>The ground (grey), rungs in a colour a column with stitches between, first rung green, last red; written where SPLITTER_PICTURES says.</summary>
    internal static void Picture(string name, params IEnumerable<(Region Ground, IEnumerable<Column> Columns)> parts)
    {
        if (Environment.GetEnvironmentVariable("SPLITTER_PICTURES") is not { Length: > 0 } folder)
            return;
        var box = Box.Around(parts.Select(p => p.Ground.Bounds)).Grown(500);
        var svg = new StringBuilder();
        svg.Append(
            CultureInfo.InvariantCulture,
            $"<svg xmlns='http://www.w3.org/2000/svg' viewBox='{box.Left} {box.Top} {box.Width} {box.Height}' width='1600'>"
        );
        svg.Append(
            CultureInfo.InvariantCulture,
            $"<rect x='{box.Left}' y='{box.Top}' width='100%' height='100%' fill='white'/>"
        );
        foreach (var (ground, columns) in parts)
        {
            svg.Append("<path fill='#dddddd' fill-rule='evenodd' d='");
            foreach (var ring in ground.Rings)
                svg.Append('M').AppendJoin(' ', ring.Points.Select(p => $"{p.X} {p.Y}")).Append('Z');
            svg.Append("'/>");
            foreach (var (column, i) in columns.Select((c, i) => (c, i)))
            {
                string[] colors = ["#1f5fbf", "#bf5f1f", "#5f1fbf", "#0f8f6f", "#8f0f5f"];
                foreach (var (from, to) in column.Rungs.Zip(column.Rungs.Skip(1)))
                    for (
                        double at = 0, step = Stitch / Math.Max(1, from.Middle.DistanceTo(to.Middle));
                        at < 1;
                        at += step
                    )
                        Line(
                            new(from.Left.Towards(to.Left, at), from.Right.Towards(to.Right, at)),
                            colors[i % colors.Length],
                            at == 0 ? 60 : 25
                        );
                Line(column.Rungs[0], "#00a000", 90);
                Line(column.Rungs[^1], "#d00000", 90);
            }
        }
        svg.Append("</svg>");
        File.WriteAllText(Path.Combine(folder, name + ".svg"), svg.ToString());

        void Line(Rung r, string color, int width) =>
            svg.Append(
                CultureInfo.InvariantCulture,
                $"<path d='M{r.Left.X} {r.Left.Y}L{r.Right.X} {r.Right.Y}' stroke='{color}' stroke-width='{Math.Min(width, width * box.Width / 30000.0)}'/>"
            );
    }

    private static Point ToPoint(string text)
    {
        var numbers = text.Trim().Split(' ').Select(n => double.Parse(n, CultureInfo.InvariantCulture)).ToArray();
        return Point.FromMillimetres(numbers[0], numbers[1]);
    }
}
