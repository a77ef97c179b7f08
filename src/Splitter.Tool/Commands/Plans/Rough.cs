using System.Globalization;

namespace Splitter.Tool.Commands.Plans;

/// <summary>Estimates written so that nobody takes them for counts.</summary>
internal static class Rough
{
    /// <summary>To two or three digits: an estimate is not better than that.</summary>
    internal static string Stitches(int count)
    {
        var step =
            count < 1000 ? 10
            : count < 100_000 ? 100
            : 1000;
        return ((count + (step / 2)) / step * step).ToString(CultureInfo.InvariantCulture);
    }

    internal static string Time(double minutes)
    {
        var whole = (int)Math.Round(minutes);
        return whole < 60
            ? string.Create(CultureInfo.InvariantCulture, $"{whole} min")
            : string.Create(CultureInfo.InvariantCulture, $"{whole / 60} h {whole % 60:00} min");
    }
}
