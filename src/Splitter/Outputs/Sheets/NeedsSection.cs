using System.Xml.Linq;
using Splitter.Geometry;
using Splitter.Outputs.Templates;
using Splitter.Recipes;

namespace Splitter.Outputs.Sheets;

/// <summary>What has to be there before one begins. Figures: common practice, no source.</summary>
internal static class NeedsSection
{
    /// <summary>
    /// Stabilizer beyond the field on each side, µm: what a hoop's frame takes, and something to hold.
    /// </summary>
    private const int StabilizerMargin = 50 * Units.Millimetre;

    /// <summary>Paper tape over the head of a tack, µm.</summary>
    private const int TapeForTack = 30 * Units.Millimetre;

    /// <summary>Hours of sewing after which a needle is blunt.</summary>
    private const double HoursOfNeedle = 8;

    /// <summary>Needles that are there in case one breaks.</summary>
    private const int SpareNeedles = 1;

    internal static XElement Of(SheetContent sheet)
    {
        var (say, numbers) = (sheet.Say, sheet.Numbers);
        var hoop = sheet.Plan.Hoop;
        var (width, height) = ClothPiece.Rough(sheet);
        var rough = ("size", numbers.RoughSize(width, height));
        var needles = (int)Math.Ceiling(sheet.Work.Minutes / 60 / HoursOfNeedle) + SpareNeedles;
        var set = sheet.Plan.Hoopings.Sum(h => h.Takes.Length);
        var most = sheet.Plan.Hoopings.Max(h => h.Takes.Length);
        var needs = new List<object>
        {
            say.Say("needs.hoop", ("hoop", hoop.Name), ("field", numbers.Size(hoop.Width, hoop.Height))),
            say.Say("needs.cloth", rough),
        };
        if (sheet.IsSplit)
            needs.Add(say.Say("needs.backing", rough));
        needs.Add(
            say.Say(
                "needs.stabilizer",
                ("pieces", say.Many("pieces", sheet.Parts.Length)),
                ("size", numbers.RoughSize(hoop.Width + (2 * StabilizerMargin), hoop.Height + (2 * StabilizerMargin))),
                ("margin", numbers.Rough(StabilizerMargin))
            )
        );
        needs.Add(say.Say("needs.threads"));
        needs.Add(say.Say("needs.bobbin", ("length", numbers.Thread(sheet.Work.BobbinMetres))));
        needs.Add(say.Say("needs.needles", ("needles", say.Many("needles", needles))));
        if (set > 0)
        {
            needs.Add(
                say.Say(
                    "needs.tacks",
                    ("tacks", say.Many("tacks", most)),
                    ("times", say.Many("times", set)),
                    ("tape", numbers.Rough(set * TapeForTack))
                )
            );
        }
        if (sheet.Recipe.Output.Files.Contains(OutputKind.Template))
            needs.Add(say.Say("needs.template", ("file", Template.FileName(sheet.Recipe.Output.Paper))));
        needs.Add(say.Say("needs.tools"));
        needs.Add(say.Say("needs.glasses"));
        return Html.Classed("section", "needs", Html.Element("h2", say.Say("needs.title")), Html.Ticks(needs));
    }
}
