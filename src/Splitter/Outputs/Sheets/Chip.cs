using System.Xml.Linq;
using Splitter.Artwork;

namespace Splitter.Outputs.Sheets;

/// <summary>A thread as one finds it among others: its number, its colour, its name.</summary>
internal static class Chip
{
    /// <param name="marking">What the thread of marks is called; said in full if left out.</param>
    internal static object[] Of(SheetContent sheet, SewThread? thread, string? marking = null) =>
        thread is null
            ? [Html.Classed("span", "chip marking", "+"), " ", marking ?? sheet.NameOf(null)]
            :
            [
                Html.Classed(
                    "span",
                    "chip",
                    new XAttribute("style", $"background:{thread.Color};color:{Ink(thread.Color)}"),
                    $"{sheet.NumberOf(thread)}"
                ),
                " ",
                thread.Name,
            ];

    /// <summary>
    /// Black or white, whichever stands out more: always at 4.5 to 1 or better (WCAG 2.1, from memory).
    /// </summary>
    internal static string Ink(string colour) => Contrast.Luminance(colour) > Contrast.Middle ? "#000" : "#fff";
}
