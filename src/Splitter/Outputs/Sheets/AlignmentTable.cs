using System.Xml.Linq;
using Splitter.Artwork;
using Splitter.Parts;
using Splitter.Planning;

namespace Splitter.Outputs.Sheets;

/// <summary>What to look at before a part is sewn, what will do, and what to do if it does not.</summary>
internal sealed class AlignmentTable(SheetContent sheet, Part part)
{
    internal XElement Write()
    {
        var say = sheet.Say;
        return Html.Classed(
            "div",
            "check",
            Html.Table(
                say.Say("check.title"),
                [say.Say("column.cross"), say.Say("column.meets"), say.Say("column.good"), say.Say("column.off")],
                part.Hooping.Alignments.Select(
                    (cross, i) =>
                        new object?[]
                        {
                            $"{i + 1}",
                            Meets(cross),
                            sheet.Numbers.Fine(AlignmentLimit.Of(sheet, part, cross)),
                            Off(cross),
                        }
                )
            ),
            Html.Element(
                "p",
                part.Hooping.Alignments.Length == 1 ? say.Say("check.one") : say.Say("check.several"),
                " ",
                EveryHoopingPage.Linked(sheet, say.Say("check.as-ever"))
            ),
            new RealignLine(sheet, part).Write()
        );
    }

    /// <summary>A corner's hole is a place; an edge or a line only says how far a cross lies from it.</summary>
    internal static bool ShowsBothWays(SheetContent sheet, AlignmentStitch cross) =>
        sheet.Plan.Corners.Any(c => c.Id == cross.On);

    /// <summary>Room for what is read, and which way, to ring.</summary>
    private object[] Off(AlignmentStitch cross) =>
        ShowsBothWays(sheet, cross)
            ? [Reading("check.sideways"), " ", Reading("check.upwards")]
            : [Reading("check.square")];

    private XElement Reading(string way) =>
        Html.Classed("span", "reading", Html.Blank(), $" {sheet.Numbers.Unit} ", sheet.Say.Say(way));

    /// <summary>In words that a person has: its colour, what it is, and where one looks for it.</summary>
    internal string Meets(AlignmentStitch cross)
    {
        var say = sheet.Say;
        if (ShowsBothWays(sheet, cross))
            return say.Say("check.corner", ("corner", cross.On));
        var shape = sheet.Drawing.Shapes.First(s => s.Id == cross.On);
        var thread = ("thread", sheet.Drawing.Threads[shape.Thread].Name);
        var what = shape switch
        {
            FillShape => say.Say("check.fill", thread),
            SatinShape => say.Say("check.satin", thread),
            _ => say.Say("check.run", thread),
        };
        return say.Say(
            "check.shape",
            ("what", what),
            ("part", sheet.Plan.Hoopings[cross.With].Letter),
            ("place", HoopPlace.Of(say, part.Field, cross.At))
        );
    }
}
