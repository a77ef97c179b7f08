using System.Xml.Linq;

namespace Splitter.Outputs.Sheets;

/// <summary>The finished piece, what the work amounts to, and what comes before all else: safety.</summary>
internal static class CoverPage
{
    internal static XElement Of(SheetContent sheet, WorkMap map)
    {
        var (say, plan) = (sheet.Say, sheet.Plan);
        return Html.Element(
            "header",
            Html.Element("h1", sheet.Recipe.Title),
            Html.Classed(
                "p",
                "lead",
                say.Say(
                    "cover.hoop",
                    ("hoop", plan.Hoop.Name),
                    ("field", sheet.Numbers.Size(plan.Hoop.Width, plan.Hoop.Height)),
                    ("size", sheet.Numbers.Size(sheet.Drawing.Width, sheet.Drawing.Height)),
                    ("parts", say.Many("parts", plan.Hoopings.Length)),
                    ("time", Texts.Numbers.Time(sheet.Work.Minutes + sheet.Work.HoopingMinutes))
                )
            ),
            Html.Classed(
                "div",
                map.IsCrowded ? "pictures many" : "pictures",
                FinishedFigure.Of(sheet),
                Html.Element(
                    "figure",
                    map.Whole(say.Say("cover.picture", ("title", sheet.Recipe.Title))),
                    Html.Element("figcaption", sheet.IsSplit ? say.Say("cover.caption") : say.Say("cover.caption-one"))
                )
            ),
            Html.Classed(
                "section",
                "caution",
                new XAttribute("aria-labelledby", "first"),
                Html.Element("h2", new XAttribute("id", "first"), say.Say("safety.title")),
                Html.Element("p", Html.Element("strong", say.Say("safety.manuals"))),
                Html.List([
                    say.Say("safety.tacks"),
                    say.Say("safety.hands"),
                    say.Say("safety.eyes"),
                    say.Say("safety.blades"),
                    say.Say("safety.heat"),
                    say.Say("safety.adhesive"),
                ])
            )
        );
    }
}
