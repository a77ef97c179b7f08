using System.Collections.Immutable;
using System.Globalization;
using Splitter.Outputs.Pictures;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Outputs.Templates;

/// <summary>Every word on a template.</summary>
internal static class TemplateTexts
{
    internal const string WholeDesign = "Whole design, as it lies on the cloth";
    internal const string Top = "top";
    internal const string HoopTop = "top of the hoop";
    internal const string DrawingTop = "top of the drawing";
    internal const string LeftOut = "empty, left out";
    internal const string Millimetres = "100 mm";
    internal const string Inches = "4 in";
    internal const string FootFirst = "Print at 100 %, no fit to page.";
    internal const string FootSecond = "Measure both rules before use.";

    /// <summary>A misfit people notice in line work starts at about half a millimetre (common practice, no source).</summary>
    internal static readonly ImmutableArray<string> Advice =
    [
        "1. Print at 100 %, also called actual size: no fit to page, no shrinking to the printable area.",
        "2. Measure the rules on every sheet, here the upright one too: 100 mm and 4 in. If one is off by half a",
        "   millimetre or more, do not use the sheet: change the printer's setting and print again.",
        "3. Cut each sheet along its dashed line, if it has one at the left or at the top, and lay it over its neighbours so",
        "   that the marks with the same letter meet. Tape the sheets when all marks meet and lines run on across the cut.",
        "4. Paper shows where things lie. What sets a hooping is its sewn corners: do not sew by the paper alone, it gives",
        "   in damp air. Prick a point through the paper where the lines of its sign meet.",
        "5. Paper, pins and tacks come off the cloth before the machine runs: count them. The manuals of the machine and",
        "   of the printer come before this sheet.",
    ];

    internal static string Title(Recipe recipe, Hoop hoop) => $"{recipe.Title}, hoop {hoop.Name}: template";

    /// <summary>What a sheet belongs to.</summary>
    internal static string Subject(Recipe recipe, Hoop hoop) =>
        $"{recipe.Title}, hoop {hoop.Name}, {Size(hoop.Width, hoop.Height)}";

    internal static string Cover(Paper paper, int sheets) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"Paper template in true scale: this page and {Figures.Many(sheets, "sheet", "sheets")} of {paper}"
        );

    internal static string SheetOf(int number, int sheets) =>
        string.Create(CultureInfo.InvariantCulture, $"Sheet {number} of {sheets}");

    internal static string PartInHoop(Hooping hooping) => $"Part {hooping.Letter}, as the machine holds its hoop";

    internal static string FoldOf(Fold fold) => fold == Fold.Upright ? "upright fold" : "level fold";

    internal static string JoinsTo(string mark, int sheet) =>
        string.Create(CultureInfo.InvariantCulture, $"{mark}: sheet {sheet}");

    internal static string MapOf(int first, int last) =>
        first == last
            ? string.Create(CultureInfo.InvariantCulture, $"Sheet {first} shows the whole design:")
            : string.Create(CultureInfo.InvariantCulture, $"Sheets {first} to {last} show the whole design:");

    /// <summary>One line for each part would be long, and all parts take as many sheets.</summary>
    internal static string PartSheets(string letter, int first, int last) =>
        first == last
            ? string.Create(CultureInfo.InvariantCulture, $"{letter}: {first}")
            : string.Create(CultureInfo.InvariantCulture, $"{letter}: {first} to {last}");

    internal const string PartsOnSheets = "Parts as the machine holds the hoop, and their sheets:";

    internal static class Key
    {
        internal const string Artwork = "edge of the artwork";
        internal const string Seam = "seam; dashed over bare cloth";
        internal const string Corner = "corner; on part sheets: sewn first";
        internal const string NextCorner = "corner that the part sews last";
        internal const string Alignment = "alignment cross of a part";
        internal const string Centre = "centre of a field, top of its hoop";
        internal const string Field = "field, with its part's letter";
        internal const string Fold = "fold; broad: placement line";
        internal const string Join = "joining mark: lay on its like";
        internal const string Cut = "cut here and lay over the next";
    }

    private static string Size(int width, int height) =>
        $"{Figures.Millimetres(width)} x {Figures.Millimetres(height)} mm";
}
