using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Splitter.Geometry;
using Point = Splitter.Geometry.Point;

namespace Splitter.Tests.Artwork.Columns;

/// <summary>Outlines of filled paths, for tests of columns alone: absolute and relative commands, arcs by their centre.</summary>
internal static partial class PathReader
{
    private const int StepsOfCurve = 24;

    /// <summary>Filled paths of a file that pass a test, each with its name, scaled by millimetres a unit.</summary>
    internal static IEnumerable<(string Name, Region Ground)> Paths(
        string file,
        Func<XElement, bool> wanted,
        double scale
    )
    {
        var count = 0;
        foreach (var path in XDocument.Load(file).Descendants().Where(e => e.Name.LocalName == "path" && wanted(e)))
        {
            var move = TranslatePattern().Match((string?)path.Attribute("transform") ?? "");
            var (dx, dy) = move.Success ? (Number(move.Groups["x"].Value), Number(move.Groups["y"].Value)) : (0, 0);
            var rule =
                ((string?)path.Attribute("fill-rule") ?? (string?)path.Parent!.Attribute("fill-rule")) == "evenodd"
                    ? FillRule.EvenOdd
                    : FillRule.NonZero;
            var rings = Rings((string)path.Attribute("d")!)
                .Select(r => new Ring([
                    .. r.Select(p => Point.FromMillimetres((p.X + dx) * scale, (p.Y + dy) * scale)).Distinct(),
                ]));
            yield return (
                (string?)path.Attribute("id") ?? $"{Path.GetFileNameWithoutExtension(file)}-{count}",
                Polygons.FromRings(rings, rule)
            );
            count++;
        }
    }

    private static List<List<(double X, double Y)>> Rings(string data)
    {
        var tokens = TokenPattern().Matches(data).Select(m => m.Value).ToList();
        var rings = new List<List<(double X, double Y)>>();
        (double X, double Y) at = (0, 0),
            start = (0, 0),
            control = (0, 0);
        var (i, command, before) = (0, 'M', ' ');
        double Next() => Number(tokens[i++]);
        while (i < tokens.Count)
        {
            if (char.IsLetter(tokens[i][0]))
                command = tokens[i++][0];
            var (o, kind) = (char.IsLower(command) ? at : (X: 0.0, Y: 0.0), char.ToUpperInvariant(command));
            (double X, double Y) Pair() => (o.X + Next(), o.Y + Next());
            switch (kind)
            {
                case 'M':
                    at = start = Pair();
                    rings.Add([at]);
                    command = command == 'm' ? 'l' : 'L';
                    break;
                case 'L':
                    rings[^1].Add(at = Pair());
                    break;
                case 'H':
                    rings[^1].Add(at = (o.X + Next(), at.Y));
                    break;
                case 'V':
                    rings[^1].Add(at = (at.X, (char.IsLower(command) ? at.Y : 0) + Next()));
                    break;
                case 'C' or 'S':
                    var first =
                        kind == 'C' ? Pair()
                        : before is 'C' or 'S' ? Mirrored()
                        : at;
                    control = Pair();
                    var to = Pair();
                    Curve(rings[^1], at, first, control, to);
                    at = to;
                    break;
                case 'Q' or 'T':
                    control =
                        kind == 'Q' ? Pair()
                        : before is 'Q' or 'T' ? Mirrored()
                        : at;
                    var end = Pair();
                    Curve(rings[^1], at, Third(at, control), Third(end, control), end);
                    at = end;
                    break;
                case 'A':
                    var (rx, ry, turn, large, sweep) = (Next(), Next(), Next(), Next() != 0, Next() != 0);
                    var arcEnd = Pair();
                    Arc(rings[^1], at, (rx, ry), turn, large, sweep, arcEnd);
                    at = arcEnd;
                    break;
                case 'Z':
                    at = start;
                    if (i < tokens.Count && !char.IsLetter(tokens[i][0]))
                        throw new FormatException(data);
                    if (i < tokens.Count && char.ToUpperInvariant(tokens[i][0]) != 'M')
                        rings.Add([at]);
                    break;
                default:
                    throw new FormatException(data);
            }
            before = kind;
        }
        return [.. rings.Where(r => r.Count > 2)];

        (double X, double Y) Mirrored() => ((2 * at.X) - control.X, (2 * at.Y) - control.Y);
        static (double X, double Y) Third((double X, double Y) p, (double X, double Y) c) =>
            (p.X + ((c.X - p.X) * 2 / 3), p.Y + ((c.Y - p.Y) * 2 / 3));
    }

    private static void Curve(
        List<(double X, double Y)> ring,
        (double X, double Y) a,
        (double X, double Y) b,
        (double X, double Y) c,
        (double X, double Y) d
    )
    {
        for (var k = 1; k <= StepsOfCurve; k++)
        {
            double t = k / (double)StepsOfCurve,
                u = 1 - t;
            double On(double p, double q, double r, double s) =>
                (u * u * u * p) + (3 * u * u * t * q) + (3 * u * t * t * r) + (t * t * t * s);
            ring.Add((On(a.X, b.X, c.X, d.X), On(a.Y, b.Y, c.Y, d.Y)));
        }
    }

    /// <summary>From end points to the centre as in SVG 1.1, appendix F.6.5.</summary>
    private static void Arc(
        List<(double X, double Y)> ring,
        (double X, double Y) from,
        (double X, double Y) radii,
        double turn,
        bool large,
        bool sweep,
        (double X, double Y) to
    )
    {
        var (sin, cos) = Math.SinCos(turn * Math.PI / 180);
        var (hx, hy) = ((from.X - to.X) / 2, (from.Y - to.Y) / 2);
        var (x, y) = ((cos * hx) + (sin * hy), (cos * hy) - (sin * hx));
        var over = Math.Sqrt((x * x / (radii.X * radii.X)) + (y * y / (radii.Y * radii.Y)));
        var (rx, ry) = over > 1 ? (radii.X * over, radii.Y * over) : radii;
        var below = (rx * rx * y * y) + (ry * ry * x * x);
        var root = Math.Sqrt(Math.Max(0, ((rx * rx * ry * ry) - below) / below)) * (large == sweep ? -1 : 1);
        var (cx, cy) = (root * rx * y / ry, -root * ry * x / rx);
        var (startAngle, endAngle) = (
            Math.Atan2((y - cy) / ry, (x - cx) / rx),
            Math.Atan2((-y - cy) / ry, (-x - cx) / rx)
        );
        var arc = endAngle - startAngle;
        if (sweep && arc < 0)
            arc += Math.Tau;
        if (!sweep && arc > 0)
            arc -= Math.Tau;
        for (var k = 1; k <= 2 * StepsOfCurve; k++)
        {
            var (s, c) = Math.SinCos(startAngle + (arc * k / (2 * StepsOfCurve)));
            var (px, py) = (cx + (rx * c), cy + (ry * s));
            ring.Add(
                k == 2 * StepsOfCurve
                    ? to
                    : ((cos * px) - (sin * py) + ((from.X + to.X) / 2), (sin * px) + (cos * py) + ((from.Y + to.Y) / 2))
            );
        }
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"[A-Za-z]|[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?", RegexOptions.None, 5000)]
    private static partial Regex TokenPattern();

    [GeneratedRegex(@"translate\(\s*(?<x>[-\d.]+)[ ,]+(?<y>[-\d.]+)\s*\)", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex TranslatePattern();
}
