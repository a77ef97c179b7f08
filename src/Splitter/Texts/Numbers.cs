using System.Globalization;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Texts;

/// <summary>
/// Numbers as a person reads them: the language's decimal mark, the recipe's unit, no culture of a machine.
/// </summary>
internal sealed class Numbers(SheetLanguage language, LengthUnit unit)
{
    /// <summary>Keeps a number and its unit on one line, and thousands together.</summary>
    internal const string Space = "\u00a0";

    /// <summary>Exactly, by the international yard and pound agreement of 1959 (from memory).</summary>
    private const double YardsPerMetre = 1 / 0.9144;

    private bool Inches => unit == LengthUnit.Inches;

    /// <summary>Thousands apart.</summary>
    internal static string Count(int count) => Grouped(count.ToString(CultureInfo.InvariantCulture));

    /// <summary>To a tenth of a millimetre, or a hundredth of an inch: as closely as one reads a ruler.</summary>
    internal string Length(double micrometres) => $"{Number(micrometres)}{Space}{Unit}";

    /// <summary>To a hundredth of a millimetre, or a thousandth of an inch: how closely things fit.</summary>
    internal string Fine(double micrometres) =>
        Inches
            ? $"{Text(micrometres / Units.Inch, "0.000")}{Space}in"
            : $"{Text(micrometres / Units.Millimetre, "0.0#")}{Space}mm";

    /// <summary>How far parts may miss each other, as closely, without its unit: all of them as long.</summary>
    internal string Misfit(int micrometres) =>
        Inches ? Text(micrometres / (double)Units.Inch, "0.000") : Text(micrometres / (double)Units.Millimetre, "0.00");

    /// <summary>Whole millimetres, or tenths of an inch: cloth and stabilizer.</summary>
    internal string Rough(double micrometres) => $"{RoughNumber(micrometres)}{Space}{Unit}";

    internal string RoughSize(double width, double height) => $"{RoughNumber(width)}{Space}×{Space}{Rough(height)}";

    internal string Size(double width, double height) => $"{Number(width)}{Space}×{Space}{Length(height)}";

    /// <summary>Thread, rounded up: nobody is to run out. Metres or yards.</summary>
    internal string Thread(double metres) => ThreadOf((int)Math.Ceiling(InUnit(metres)));

    /// <summary>Several in a table, so rounded that they add up.</summary>
    internal Summed Threads(IEnumerable<double> metres) => Summed.Of(metres.Select(InUnit), ThreadOf);

    /// <summary>Rounded up to whole minutes.</summary>
    internal static string Time(double minutes) => TimeOf((int)Math.Ceiling(minutes));

    /// <summary>Several in a table, so rounded that they add up.</summary>
    internal static Summed Times(IEnumerable<double> minutes) => Summed.Of(minutes, TimeOf);

    private double InUnit(double metres) => Inches ? metres * YardsPerMetre : metres;

    private string ThreadOf(int length) => $"{Count(length)}{Space}{(Inches ? "yd" : "m")}";

    private static string TimeOf(int minutes) =>
        minutes < 60 ? $"{minutes}{Space}min"
        : minutes % 60 == 0 ? $"{Count(minutes / 60)}{Space}h"
        : $"{Count(minutes / 60)}{Space}h{Space}{minutes % 60:00}{Space}min";

    /// <summary>To a hundredth: 0.05 mm over 300 mm.</summary>
    internal string Degrees(double degrees) => $"{Text(degrees, "0.00")}°";

    /// <summary>A share, to a hundredth of a percent.</summary>
    internal string Percent(double share) => $"{Text(share * 100, "0.00")}{Space}%";

    internal string Unit => Inches ? "in" : "mm";

    private string Number(double micrometres) =>
        Inches ? Text(micrometres / Units.Inch, "0.00") : Text(micrometres / Units.Millimetre, "0.#");

    private string RoughNumber(double micrometres) =>
        Inches ? Text(micrometres / Units.Inch, "0.#") : Text(micrometres / Units.Millimetre, "0");

    private string Text(double value, string format)
    {
        // In decimal, so that halves are rounded as one does by hand; adding nothing makes minus nothing nothing.
        var text = Math.Round((decimal)value, 3, MidpointRounding.AwayFromZero)
            .ToString(format, CultureInfo.InvariantCulture);
        var point = text.IndexOf('.', StringComparison.Ordinal);
        var (whole, rest) = point < 0 ? (text, "") : (text[..point], text[point..]);
        var all = Grouped(whole) + rest;
        return language == SheetLanguage.German ? all.Replace('.', ',') : all;
    }

    private static string Grouped(string digits)
    {
        // Four digits alone are read as easily without a gap.
        for (var at = digits.Length - 3; at > 0 && digits.Length > 4; at -= 3)
            digits = digits.Insert(at, Space);
        return digits;
    }
}
