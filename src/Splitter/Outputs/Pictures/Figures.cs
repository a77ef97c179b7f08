using System.Globalization;
using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>Numbers as pictures show them.</summary>
internal static class Figures
{
    /// <summary>Thousands apart: 12 345.</summary>
    internal static string Count(int count)
    {
        var digits = count.ToString(CultureInfo.InvariantCulture);
        for (var at = digits.Length - 3; at > 0; at -= 3)
            digits = digits.Insert(at, " ");
        return digits;
    }

    internal static string Many(int count, string one, string many) => $"{Count(count)} {(count == 1 ? one : many)}";

    /// <summary>An area in whole square millimetres; one below four quarters of them as it is.</summary>
    /// <param name="quarters">Of a square millimetre.</param>
    internal static string QuarterMillimetres(int quarters) =>
        quarters < 4
            ? (quarters / 4m).ToString("0.##", CultureInfo.InvariantCulture)
            : Count((int)Math.Round(quarters / 4m));

    internal static string Millimetres(int micrometres) =>
        ((decimal)micrometres / Units.Millimetre).ToString("0.#", CultureInfo.InvariantCulture);
}
