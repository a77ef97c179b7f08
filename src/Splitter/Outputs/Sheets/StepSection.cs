using System.Collections.Immutable;
using System.Xml.Linq;
using Splitter.Parts;

namespace Splitter.Outputs.Sheets;

/// <summary>The steps of a part in the order of its tape, and what to do at each stop between them.</summary>
internal sealed class StepSection(SheetContent sheet, ListedPart listed)
{
    private readonly Texts.Phrasebook say = sheet.Say;

    /// <summary>
    /// Steps that stay together with what comes after them: on paper no few lines stand alone on a page.
    /// </summary>
    private const int Last = 6;

    /// <summary>Fewer of them fill too little: then judging the fit, the second step, stays with them.</summary>
    private const int Fewest = 4;

    /// <summary>Setting and judging take most of a page: of many steps they are not among the last.</summary>
    private const int First = 2;

    /// <summary>
    /// What the crosses of a part should meet that was moved in the hoop; null for a part as planned.
    /// </summary>
    internal XElement? Moved { get; init; }

    private Part Part => listed.Part;

    private int Split => Part.Steps.Length < First + Fewest ? First - 1 : Math.Max(First, Part.Steps.Length - Last);

    /// <param name="after">What comes after the last step.</param>
    internal XElement Write(params object?[] after) =>
        Html.Element(
            "section",
            Html.Element("h3", say.Say("steps.title")),
            Html.Classed("p", "note", say.Say("steps.safety")),
            Listed(Part.Steps[..Split]),
            Html.Classed("div", "last", Listed(Part.Steps[Split..]), after)
        );

    /// <summary>Numbers go on where the list before ended.</summary>
    private XElement? Listed(ImmutableArray<Step> steps) =>
        steps.IsEmpty
            ? null
            : Html.Classed(
                "ol",
                "steps",
                new XAttribute("start", $"{steps[0].Number}"),
                new XAttribute("style", $"counter-reset: step {steps[0].Number - 1}"),
                steps.Select(step => Html.Classed("li", ClassOf(step), Sewn(step), Stop(step)))
            );

    /// <summary>Most stops only change the thread: such a step takes one line.</summary>
    private bool IsBrief(Step step) =>
        step.Kind == StepKind.Body && step.Actions.Length == 1 && Part.Steps[step.Number].Kind == StepKind.Body;

    /// <summary>
    /// What is asked at the crosses takes half a page: it may go on on the next one, each of its boxes whole.
    /// </summary>
    private string ClassOf(Step step) =>
        step.Kind == StepKind.Alignment ? "step long"
        : IsBrief(step) ? "step brief"
        : "step";

    private XElement Sewn(Step step)
    {
        var counts = listed.Figures.Counts;
        return Html.Classed(
            "p",
            "sewn",
            Html.Tick(Html.Element("strong", Name(step))),
            " ",
            Html.Element(
                "small",
                say.Say(
                    "step.amounts",
                    ("stitches", say.Many("stitches", counts.Steps[step.Number - 1])),
                    ("time", TimeOf(step))
                )
            )
        );
    }

    private string TimeOf(Step step)
    {
        var minutes = listed.Figures.StepMinutes(sheet.Recipe.Machine, step);
        return minutes < 1 ? say.Say("step.no-time") : Texts.Numbers.Time(minutes);
    }

    private object[] Name(Step step) =>
        step.Kind switch
        {
            StepKind.Placement => [say.Say("step.placement")],
            StepKind.Corners => [say.Say("step.corners", ("corners", Corners(Part.Hooping.Takes)))],
            StepKind.Alignment =>
            [
                say.Say("step.alignment", ("crosses", say.Many("crosses", Part.Hooping.Alignments.Length))),
            ],
            StepKind.NextCorners => [say.Say("step.next-corners", ("corners", Corners(Part.Hooping.Gives)))],
            _ => Chip.Of(sheet, step.Thread),
        };

    private string Corners(IEnumerable<int> indexes) =>
        string.Join(", ", indexes.Select(i => sheet.Plan.Corners[i].Id));

    private XElement Stop(Step step)
    {
        if (step.Actions.IsEmpty)
            return Html.Classed(
                "div",
                "stop",
                Html.Classed("p", "when", Html.Element("strong", say.Say("stop.end", ("part", Part.Letter))))
            );
        return Html.Classed(
            "div",
            IsBrief(step) ? "stop short" : "stop",
            Html.Classed(
                "p",
                "when",
                Html.Element(
                    "strong",
                    IsBrief(step) ? say.Say("stop.brief") : say.Say("stop.title", ("step", $"{step.Number}"))
                )
            ),
            step.Kind == StepKind.Alignment ? Judged(step)
                : step.Kind == StepKind.Corners ? Set(step)
                : Html.Ticks(step.Actions)
        );
    }

    /// <summary>
    /// Where no cross shows the fit, what a person reads at the corners stands here, before any of them is taken out.
    /// </summary>
    private object?[] Set(Step step)
    {
        if (step.NeedleLook + 1 is not { } looked)
            return [Html.Ticks(step.Actions), Tacks(say.Say("tacks.count"))];
        var good = sheet.Numbers.Fine(AlignmentLimit.OfPart(sheet, Part));
        return
        [
            Html.Ticks(step.Actions[..looked]),
            Tacks(say.Say("tacks.count")),
            Html.Element("p", say.Say("check.hole-good", ("good", good))),
            new RealignLine(sheet, Part).Write(),
            looked == step.Actions.Length ? null : Html.Ticks(step.Actions[looked..]),
        ];
    }

    /// <summary>
    /// First what to look at and what will do, then setting it again, and only when all is well what cannot be undone:
    /// corners that are taken out are gone.
    /// </summary>
    private object?[] Judged(Step step) =>
        Moved is not null
            ? [Html.Ticks(step.Actions[..1]), Moved, Html.Ticks(step.Actions[1..])]
            :
            [
                Html.Ticks(step.Actions[..1]),
                new AlignmentTable(sheet, Part).Write(),
                Html.Ticks(step.Actions[1..2]),
                Tacks(say.Say("tacks.count-again")),
                Html.Ticks(step.Actions[2..]),
            ];

    /// <summary>Counted in and counted out, a box for each tack both ways.</summary>
    private XElement Tacks(string heading)
    {
        var ids = Part.Hooping.Takes.Select(i => sheet.Plan.Corners[i].Id).ToList();
        return Html.Classed(
            "div",
            "tacks",
            Html.Element("p", Html.Element("strong", heading)),
            Row(say.Say("tacks.in", ("tacks", say.Many("tacks", ids.Count)))),
            Row(say.Say("tacks.out", ("tacks", say.Many("tacks", ids.Count))))
        );

        XElement Row(string text) =>
            Html.Element("p", text, " ", ids.Select(id => new object[] { Html.Tick(id), " " }));
    }
}
