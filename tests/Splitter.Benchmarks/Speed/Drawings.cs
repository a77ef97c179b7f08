using System.Globalization;
using System.Text;

namespace Splitter.Benchmarks.Speed;

/// <summary>Artwork of any size, as SVG whose unit is one millimetre.</summary>
internal static class Drawings
{
    /// <summary>Side of a tile of the quilt, mm.</summary>
    internal const int Tile = 50;

    private static readonly string[] Colours = ["#14304f", "#2b8c95", "#a5d3cc", "#e39a84", "#f3b548", "#3f6f52"];

    /// <summary>Square tiles, each a ground with a leaf, its vein and two narrow petals.</summary>
    internal static string Quilt(int tiles)
    {
        var dice = new Dice();
        return Svg(
            tiles * Tile,
            svg =>
            {
                for (var row = 0; row < tiles; row++)
                for (var column = 0; column < tiles; column++)
                {
                    var (x, y) = (column * Tile, row * Tile);
                    var ground = dice.Next(3);
                    svg.Append($"<rect fill='{Colours[ground]}' x='{x}' y='{y}' width='{Tile}' height='{Tile}'/>\n");
                    var (cx, cy) = (x + 20 + dice.Next(10), y + 20 + dice.Next(10));
                    svg.Append(
                        $"<path fill='{Colours[3 + dice.Next(3)]}' d='M{cx - 14} {cy}c5-12 20-12 28 0c-8 12-23 12-28 0z'/>\n"
                    );
                    svg.Append(
                        $"<path fill='none' stroke='{Colours[0]}' stroke-width='0.6' d='M{cx - 12} {cy}c8-4 16 4 24 0'/>\n"
                    );
                    for (var petal = 0; petal < 2; petal++)
                        svg.Append(
                            $"<path fill='{Colours[2]}' d='M{x + 6 + (petal * 30)} {y + 6}l3 -1.5 6 1.5 -6 1.5z'/>\n"
                        );
                }
            }
        );
    }

    /// <summary>Islands one above the other, whose coasts bend at every scale.</summary>
    /// <param name="vertices">Of all of them together.</param>
    internal static string Coast(int polygons, int vertices, int side)
    {
        var dice = new Dice();
        return Svg(
            side,
            svg =>
            {
                for (var island = 0; island < polygons; island++)
                {
                    var (corners, height) = (vertices / polygons, (double)side / polygons);
                    svg.Append($"<path fill='{Colours[island % Colours.Length]}' d='M");
                    var phases = Enumerable.Range(0, 10).Select(_ => dice.Next(1000) * Math.Tau / 1000).ToList();
                    for (var i = 0; i < corners; i++)
                    {
                        var angle = Math.Tau * i / corners;
                        // Octaves of a wave: each twice as fast and 0.6 times as high as the one before.
                        var (reach, weight, speed) = (0.7, 0.1, 3);
                        foreach (var phase in phases)
                        {
                            reach += weight * Math.Sin((speed * angle) + phase);
                            (weight, speed) = (weight * 0.6, speed * 2);
                        }
                        var x = (side / 2.0) + (reach * side / 2 * Math.Cos(angle));
                        var y = (height * (island + 0.5)) + (reach * height / 2 * Math.Sin(angle));
                        svg.Append($" {x:0.###} {y:0.###}");
                    }
                    svg.Append($"z'/>\n");
                }
            }
        );
    }

    /// <summary>Small diamonds on bare cloth.</summary>
    internal static string Seeds(int count, uint side)
    {
        var dice = new Dice();
        return Svg(
            (int)side,
            svg =>
            {
                for (var i = 0; i < count; i++)
                {
                    var (x, y) = (3 + dice.Next(side - 6), 3 + dice.Next(side - 6));
                    svg.Append($"<path fill='{Colours[0]}' d='M{x} {y - 3}l1.5 3 -1.5 3 -1.5 -3z'/>\n");
                }
            }
        );
    }

    /// <summary>Waves from edge to edge, drawn as lines.</summary>
    internal static string Waves(int count, int side)
    {
        var dice = new Dice();
        return Svg(
            side,
            svg =>
            {
                for (var i = 0; i < count; i++)
                {
                    var (y, height) = (10 + ((side - 20.0) * i / count), 2 + dice.Next(6));
                    svg.Append(
                        $"<path fill='none' stroke='{Colours[i % Colours.Length]}' stroke-width='0.5' d='M2 {y:0.###}"
                    );
                    for (var x = 2; x < side - 20; x += 20)
                        svg.Append($"q5 {-height} 10 0t10 0");
                    svg.Append($"'/>\n");
                }
            }
        );
    }

    private static string Svg(int side, Action<Writer> draw)
    {
        var writer = new Writer();
        writer.Append($"<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 {side} {side}'>\n");
        draw(writer);
        return writer.Append($"</svg>\n").ToString();
    }

    /// <summary>Numbers as SVG has them, whatever the culture.</summary>
    private sealed class Writer
    {
        private readonly StringBuilder text = new();

        internal Writer Append(FormattableString part)
        {
            text.AppendFormat(CultureInfo.InvariantCulture, part.Format, part.GetArguments());
            return this;
        }

        public override string ToString() => text.ToString();
    }
}
