using System.Xml.Linq;
using Splitter.Outputs.Sheets.Watching;
using Splitter.Recipes;

namespace Splitter.Outputs.Sheets;

/// <summary>
/// <c>worksheet.html</c>: the page that a person has beside the machine, for paper and for a screen. It stands alone:
/// its style and pictures are in it, it needs no network, and no script but for watching a part being sewn.
/// </summary>
internal static class WorkSheet
{
    internal const string FileName = "worksheet.html";

    private static readonly Lazy<string> Style = new(() => PageFile.Read("sheet.css") + PageFile.Read("watch.css"));

    internal static byte[] Write(SheetContent sheet)
    {
        var map = new WorkMap(sheet);
        var joins = JoinToCover.Of(sheet.Recipe, sheet.Ground);
        return Page(
            sheet,
            sheet.Say.Say("page.title", ("title", sheet.Recipe.Title), ("hoop", sheet.Plan.Hoop.Name)),
            CoverPage.Of(sheet, map),
            NeedsSection.Of(sheet),
            AmountsSection.Of(sheet),
            // On paper both on one page: neither fills one.
            Html.Classed("div", "kept", AmountsSection.PartsOf(sheet), TemplateSection.Of(sheet)),
            PreparationSection.Of(sheet, map),
            EveryHoopingPage.Of(sheet),
            sheet.Parts.Select((_, i) => new PartPage(sheet, map, i).Write()),
            FinishingPage.Of(sheet, map, joins)
        );
    }

    /// <summary>A page of this style; parts of it can be watched being sewn.</summary>
    internal static byte[] Page(SheetContent sheet, string title, params object?[] content) =>
        Html.Write(
            Html.Element(
                "html",
                new XAttribute("lang", sheet.Say.Language),
                Head(sheet, title),
                Html.Element("body", Html.Element("main", content), WatchSection.Script(sheet))
            )
        );

    private static XElement Head(SheetContent sheet, string title) =>
        Html.Element(
            "head",
            Html.Void("meta", new XAttribute("charset", "utf-8")),
            Html.Void(
                "meta",
                new XAttribute("name", "viewport"),
                new XAttribute("content", "width=device-width, initial-scale=1")
            ),
            Html.Element("title", title),
            Html.Element("style", $"\n{Style.Value}@page {{ size: {SizeOf(sheet.Recipe.Output.Paper)}; }}\n")
        );

    private static string SizeOf(Paper paper) => paper == Paper.Letter ? "letter" : "A4";
}
