using System.Xml.Linq;
using Splitter.Geometry;
using Splitter.Outputs.Sheets.Watching;
using Splitter.Parts;

namespace Splitter.Outputs.Sheets;

/// <summary>One part, from the empty hoop to the cloth out of it again. Each section stands alone.</summary>
internal sealed class PartPage(SheetContent sheet, WorkMap map, int index)
{
    private readonly ListedPart listed = sheet.Parts[index];

    private Part Part => listed.Part;

    internal XElement Write() =>
        Html.Classed(
            "section",
            "part",
            new XAttribute("id", $"part-{Part.Letter}"),
            new XAttribute("aria-labelledby", $"title-{Part.Letter}"),
            Html.Element(
                "h2",
                new XAttribute("id", $"title-{Part.Letter}"),
                sheet.Say.Say("part.title", ("part", Part.Letter)),
                " ",
                Html.Element("small", Summary())
            ),
            Setup(),
            Threads(),
            new StepSection(sheet, listed).Write(WatchSection.Of(sheet, Part), After())
        );

    private string Summary() =>
        sheet.Say.Say(
            "part.summary",
            ("number", Texts.Numbers.Count(index + 1)),
            ("parts", Texts.Numbers.Count(sheet.Parts.Length)),
            ("file", PartFiles.Tape(Part.Letter)),
            ("stitches", Texts.Numbers.Count(listed.Figures.Counts.Stitches)),
            ("time", sheet.PartTimes.Rows[index])
        );

    /// <summary>
    /// What one looks at before and while the cloth is set: on one page, beside each other where there is room.
    /// </summary>
    private XElement Setup()
    {
        var corners = new CornerSection(sheet, Part);
        return Html.Classed("div", "setup", Pictures(), corners.Signs(), Before(), corners.Distances());
    }

    private XElement[] Pictures() =>
        [
            Html.Element(
                "figure",
                map.Part(index, sheet.Say.Say("part.map", ("part", Part.Letter))),
                Html.Element("figcaption", Lies())
            ),
            Html.Element(
                "figure",
                new HoopView(sheet, Part).Draw(sheet.Say.Say("part.hoop-view", ("part", Part.Letter))),
                Html.Element("figcaption", InHoop())
            ),
        ];

    /// <summary>Which way the hoop lies on the work.</summary>
    private string Lies() =>
        Part.Field.Turn switch
        {
            Turn.None => sheet.Say.Say("lies.upright"),
            Turn.Quarter => sheet.Say.Say("lies.right"),
            Turn.Half => sheet.Say.Say("lies.down"),
            _ => sheet.Say.Say("lies.left"),
        };

    /// <summary>Which way the cloth lies in the hoop, and where it ends.</summary>
    private string InHoop()
    {
        var (say, edge) = (sheet.Say, ClothEdge.Of(sheet.Recipe.Cloth, Part.Field));
        var lies = say.Say("part.in-hoop", ("top", Texts.ClothTop.In(say, Part.Field.Turn)));
        return edge.IsEmpty ? lies : $"{lies} {say.Say("part.edge", ("sides", ClothEdge.Says(say, edge)))}";
    }

    private XElement Before()
    {
        var say = sheet.Say;
        var steps = new List<object> { EveryHoopingPage.Linked(sheet, say.Say("before.as-ever")) };
        if (Part.Hooping.Takes.IsEmpty && sheet.Plan.PlacementLines.IsEmpty)
            steps.Add(say.Say("before.mount", ("top", Texts.ClothTop.In(say, Part.Field.Turn))));
        steps.Add(say.Say("before.load", ("file", PartFiles.Tape(Part.Letter))));
        steps.Add(say.Say("before.thread", ("thread", sheet.NameOf(Part.Steps[0].Thread))));
        return Html.Element("section", Html.Element("h3", say.Say("before.title")), Html.Ticks(steps));
    }

    /// <summary>In the order in which they are first sewn, with what this part takes of each.</summary>
    private XElement Threads() =>
        Html.Element(
            "div",
            Html.Element("p", sheet.Say.Say("before.threads")),
            Html.Classed("ul", "threads", Spools())
        );

    private IEnumerable<XElement> Spools() =>
        Part
            .Steps.GroupBy(step => step.Thread)
            .Select(steps =>
                Html.Element(
                    "li",
                    Chip.Of(sheet, steps.Key, sheet.Say.Say("thread.marks")),
                    " ",
                    Html.Element("small", sheet.Numbers.Thread(steps.Sum(s => listed.Figures.StepMetres[s.Number - 1])))
                )
            );

    private XElement After()
    {
        var say = sheet.Say;
        var last = index == sheet.Parts.Length - 1;
        var given = Part.Hooping.Gives.Select(i => sheet.Plan.Corners[i].Id).ToList();
        var steps = new List<object> { EveryHoopingPage.Linked(sheet, say.Say("after.as-ever")) };
        if (given.Count > 0)
            steps.Add(say.Say("after.name", ("corners", say.Listed(given))));
        steps.Add(last ? say.Say("after.finish") : say.Say("after.next", ("part", sheet.Parts[index + 1].Part.Letter)));
        return Html.Element(
            "section",
            Html.Element("h3", say.Say("after.title", ("part", Part.Letter))),
            Html.Ticks(steps)
        );
    }
}
