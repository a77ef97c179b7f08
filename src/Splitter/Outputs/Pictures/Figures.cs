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

    internal static string Millimetres(int micrometres) =>
        ((decimal)micrometres / Units.Millimetre).ToString("0.#", CultureInfo.InvariantCulture);
}
