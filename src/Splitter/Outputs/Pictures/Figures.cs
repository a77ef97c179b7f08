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

    /// <summary>How far parts may miss each other, mm: a figure that is a whole number of hundredths already.</summary>
    internal static string Misfit(int micrometres) =>
        ((decimal)micrometres / Units.Millimetre).ToString("0.00", CultureInfo.InvariantCulture);

    internal static string Minutes(double minutes)
    {
        var whole = (int)Math.Ceiling(minutes);
        return whole < 60
            ? $"{whole} min"
            : string.Create(CultureInfo.InvariantCulture, $"{whole / 60} h {whole % 60:00} min");
    }
}
