using System.Xml.Linq;
using Splitter.Parts;
using Splitter.Planning;

namespace Splitter.Outputs.Sheets;

/// <summary>The corners that a part is set by: what each looks like, and how far they are from each other.</summary>
internal sealed class CornerSection(SheetContent sheet, Part part)
{
    /// <summary>What each looks like; null for a part that is set by none.</summary>
    internal XElement? Signs() =>
        part.Hooping.Takes.IsEmpty
            ? null
            : Html.Element(
                "section",
                Html.Element("h3", sheet.Say.Say("corners.title")),
                Html.Classed(
                    "ul",
                    "corners",
                    part.Hooping.Takes.Select(i => Html.Element("li", Of(sheet.Plan.Corners[i])))
                )
            );

    /// <summary>How far they are from each other; null as above.</summary>
    internal XElement? Distances()
    {
        if (part.Hooping.Takes.IsEmpty)
            return null;
        var say = sheet.Say;
        return Html.Element(
            "div",
            Html.Table(
                say.Say("corners.distances"),
                [say.Say("column.between"), say.Say("column.distance"), say.Say("column.on-cloth")],
                CornerPairs
                    .Of(sheet.Plan, part.Hooping)
                    .Select(pair =>
                        new object?[]
                        {
                            $"{pair.One.Id}–{pair.Other.Id}",
                            sheet.Numbers.Length(pair.Length),
                            Html.Blank(),
                        }
                    )
            ),
            Html.Element(
                "p",
                say.Say("corners.check", ("limit", sheet.Numbers.Fine(AlignmentLimit.OfDistances(sheet, part))))
            )
        );
    }

    private object[] Of(Corner corner) =>
        [
            CornerSign.Draw(sheet, part.Field, corner),
            Html.Element("strong", corner.Id),
            " ",
            sheet.Say.Say(
                "corners.of",
                ("part", sheet.Plan.Hoopings[corner.Donor].Letter),
                ("arms", CornerSign.Shape(sheet, part.Field, corner))
            ),
        ];
}
