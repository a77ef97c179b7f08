using System.Xml.Linq;

namespace Splitter.Outputs.Sheets;

/// <summary>The finished piece as thread; the picture is in the page, which stands alone.</summary>
internal static class FinishedFigure
{
    internal static XElement Of(SheetContent sheet) =>
        Html.Element(
            "figure",
            Html.Void(
                "img",
                new XAttribute("src", $"data:image/png;base64,{Convert.ToBase64String(sheet.Finished.Span)}"),
                new XAttribute("alt", sheet.Say.Say("finished.title", ("title", sheet.Recipe.Title)))
            ),
            Html.Element("figcaption", sheet.Say.Say("cover.finished"))
        );
}
