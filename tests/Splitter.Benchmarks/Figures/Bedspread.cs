using System.Globalization;
using System.Text;

namespace Splitter.Benchmarks.Figures;

/// <summary>
/// 5,000 diamonds scattered over a bedspread, on bare cloth or on one fill as large as all of it, for the time that large
/// work takes.
/// </summary>
internal static class Bedspread
{
    /// <summary>Width and height, mm.</summary>
    internal const uint Side = 1250;

    /// <summary>One fill below all diamonds.</summary>
    internal static readonly string Ground = string.Create(
        CultureInfo.InvariantCulture,
        $"<rect fill='#e8dcc0' width='{Side}' height='{Side}'/>\n"
    );

    private const int Diamonds = 5000;

    /// <summary>Half the width of the smallest diamonds, mm; the largest are less than three times as wide.</summary>
    private const uint Least = 3;

    /// <param name="ground">What lies below the diamonds, in SVG.</param>
    internal static string Drawing(string ground = "")
    {
        var svg = new StringBuilder();
        svg.Append(
            CultureInfo.InvariantCulture,
            $"<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 {Side} {Side}'>\n{ground}"
        );
        var dice = new Dice();
        for (var i = 0; i < Diamonds; i++)
        {
            var half = Least + dice.Next(2 * Least);
            var (x, y) = (half + dice.Next(Side - (2 * half)), half + dice.Next(Side - (2 * half)));
            svg.Append(
                CultureInfo.InvariantCulture,
                $"<path fill='#1b3a5c' d='M{x} {y - half}l{half} {half} -{half} {half} -{half} -{half}z'/>\n"
            );
        }
        return svg.Append("</svg>\n").ToString();
    }
}
