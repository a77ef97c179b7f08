using System.Xml.Linq;
using Splitter.Geometry;

namespace Splitter.Outputs.Sheets;

/// <summary>What has to be there before one begins. Figures: common practice, no source.</summary>
internal static class NeedsSection
{
    /// <summary>
    /// Stabilizer beyond the field on each side, µm: what a hoop's frame takes, and something to hold.
    /// </summary>
    private const int StabilizerMargin = 50 * Units.Millimetre;

    /// <summary>Cloth beyond what is sewn on each side, µm, where the recipe does not give its size.</summary>
    private const int ClothMargin = 50 * Units.Millimetre;

    /// <summary>Paper tape over the head of a tack, µm.</summary>
    private const int TapeForTack = 30 * Units.Millimetre;

    /// <summary>Hours of sewing after which a needle is blunt.</summary>
    private const double HoursOfNeedle = 8;

    /// <summary>Needles that are there in case one breaks.</summary>
    private const int SpareNeedles = 2;

    internal static XElement Of(SheetContent sheet)
    {
        var (say, numbers) = (sheet.Say, sheet.Numbers);
        var hoop = sheet.Plan.Hoop;
        var (width, height) = ClothSize(sheet);
        var needles = (int)Math.Ceiling(sheet.Work.Minutes / 60 / HoursOfNeedle) + SpareNeedles;
        var set = sheet.Plan.Hoopings.Sum(h => h.Takes.Length);
        var most = sheet.Plan.Hoopings.Max(h => h.Takes.Length);
        var needs = new List<object>
        {
            say.Say("needs.hoop", ("hoop", hoop.Name), ("field", numbers.Size(hoop.Width, hoop.Height))),
            say.Say("needs.cloth", ("size", numbers.RoughSize(width, height))),
        };
        if (sheet.IsSplit)
            needs.Add(say.Say("needs.backing", ("size", numbers.RoughSize(width, height))));
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
        needs.Add(say.Say("needs.tools"));
        needs.Add(say.Say("needs.glasses"));
        return Html.Classed("section", "needs", Html.Element("h2", say.Say("needs.title")), Html.Ticks(needs));
    }

    /// <summary>The recipe's, or what all fields together and the artwork ask for.</summary>
    private static (int Width, int Height) ClothSize(SheetContent sheet)
    {
        if (sheet.Recipe.Cloth.Size is { } size)
            return size;
        var sewn = Box.Around(sheet.Plan.Hoopings.Select(h => h.Field.Bounds)).Joined(sheet.Drawing.Bounds);
        return (sewn.Width + (2 * ClothMargin), sewn.Height + (2 * ClothMargin));
    }
}
