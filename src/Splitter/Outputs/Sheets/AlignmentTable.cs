using System.Xml.Linq;
using Splitter.Parts;
using Splitter.Planning;

namespace Splitter.Outputs.Sheets;

/// <summary>What to look at before a part is sewn, what will do, and what to do if it does not.</summary>
internal sealed class AlignmentTable(SheetContent sheet, Part part)
{
    /// <summary>A step in line work that people notice, µm. Common practice, no source.</summary>
    private const int NoticedInLines = 500;

    internal XElement Write()
    {
        var say = sheet.Say;
        return Html.Classed(
            "div",
            "check",
            Html.Table(
                say.Say("check.title"),
                [
                    say.Say("column.cross"),
                    say.Say("column.meets"),
                    say.Say("column.good"),
                    say.Say("column.sideways"),
                    say.Say("column.upwards"),
                ],
                part.Hooping.Alignments.Select(
                    (cross, i) =>
                        new object?[]
                        {
                            $"{i + 1}",
                            Meets(cross),
                            sheet.Numbers.Fine(AlignmentLimit.Of(sheet.Plan, part, cross)),
                            Html.Blank(),
                            Html.Blank(),
                        }
                )
            ),
            Html.List([
                say.Say("check.good"),
                say.Say("check.lines", ("noticed", sheet.Numbers.Fine(NoticedInLines))),
                say.Say("check.again"),
                say.Say("check.correct"),
            ])
        );
    }

    private string Meets(AlignmentStitch cross)
    {
        var letter = sheet.Plan.Hoopings[cross.With].Letter;
        return sheet.Plan.Corners.Any(c => c.Id == cross.On)
            ? sheet.Say.Say("check.corner", ("corner", cross.On))
            : sheet.Say.Say("check.shape", ("shape", cross.On), ("part", letter));
    }
}
