using System.Xml.Linq;
using Splitter.Parts;

namespace Splitter.Outputs.Sheets;

/// <summary>What is the same for every part, said once; a part's own page says what is not.</summary>
internal static class EveryHoopingPage
{
    internal const string Id = "every-hooping";

    internal static XElement Of(SheetContent sheet)
    {
        var say = sheet.Say;
        return Html.Classed(
            "section",
            "part",
            new XAttribute("id", Id),
            new XAttribute("aria-labelledby", $"title-{Id}"),
            Html.Element("h2", new XAttribute("id", $"title-{Id}"), say.Say("every.title")),
            sheet.IsSplit ? Html.Element("p", say.Say("every.lead")) : null,
            Html.Element("h3", say.Say("every.pictures")),
            SignKey.Of(sheet),
            Html.Element("h3", say.Say("before.title")),
            Html.List(Before(sheet)),
            Html.Element("h3", say.Say("load.title")),
            Html.List([
                say.Say("load.as-it-is"),
                say.Say("load.place"),
                say.Say("load.stops"),
                say.Say("load.trims"),
                say.Say("load.paused"),
                say.Say("load.forgotten"),
                say.Say("load.broken"),
            ]),
            Setting(sheet),
            Edge(sheet),
            Fit(sheet),
            Html.Element("h3", say.Say("every.after")),
            Html.List(After(sheet))
        );
    }

    /// <summary>From a part's page to what is told here: a sentence that ends with the name of this page.</summary>
    internal static object[] Linked(SheetContent sheet, string text) =>
        [$"{text} ", Html.Element("a", new XAttribute("href", $"#{Id}"), sheet.Say.Say("every.title")), "."];

    private static IEnumerable<object> Before(SheetContent sheet)
    {
        var say = sheet.Say;
        if (sheet.IsSplit)
            yield return say.Say("before.trimmed");
        yield return say.Say("before.stabilizer");
        if (sheet.IsSplit || !sheet.Plan.PlacementLines.IsEmpty)
            yield return say.Say("before.bare");
        yield return say.Say("before.needle");
    }

    private static object?[] Setting(SheetContent sheet)
    {
        if (!sheet.IsSplit)
            return [];
        var say = sheet.Say;
        return
        [
            Html.Element("h3", say.Say("setting.title")),
            Html.Element("figure", TackPicture.Of(sheet)),
            Html.List([
                say.Say("setting.measure"),
                say.Say("setting.tacks"),
                say.Say("setting.cloth"),
                say.Say("setting.out"),
                say.Say("setting.stay"),
            ]),
        ];
    }

    private static object?[] Edge(SheetContent sheet)
    {
        var over = sheet
            .Parts.Where(p => !ClothEdge.Of(sheet.Recipe.Cloth, p.Part.Field).IsEmpty)
            .Select(p => p.Part.Letter)
            .ToList();
        if (over.Count == 0)
            return [];
        var say = sheet.Say;
        return
        [
            Html.Element("h3", say.Say("edge.title")),
            Html.Element("p", say.Say("edge.parts", ("parts", say.Listed(over)))),
            Html.List([say.Say("edge.hold"), say.Say("edge.cover"), say.Say("edge.strip")]),
        ];
    }

    private static object?[] Fit(SheetContent sheet)
    {
        var crosses = sheet.Plan.Hoopings.Select(h => h.Alignments.Length).ToList();
        if (crosses.Max() == 0)
            return [];
        var say = sheet.Say;
        return
        [
            Html.Element("h3", say.Say("check.title")),
            Html.List([
                say.Say("check.good", ("noticed", sheet.Numbers.Fine(Noticed.InLines))),
                .. sheet.Plan.Hoopings.SelectMany(h => h.Alignments).Any(a => !AlignmentTable.ShowsBothWays(sheet, a))
                    ? new[] { say.Say("check.across") }
                    : [],
                say.Say("check.again"),
                crosses.Max() > 1 ? say.Say("check.correct.many") : say.Say("check.correct.one"),
                .. crosses.Max() > 1 ? new[] { say.Say("check.disagree") } : [],
                say.Say("check.realign"),
                .. sheet.Parts.Select(p => new RealignLine(sheet, p.Part).AsFile()).FirstOrDefault(f => f is not null)
                    is { } file
                    ? [(object[])[$"{say.Say("check.realign-file")} ", Html.Element("code", file)]]
                    : Array.Empty<object>(),
            ]),
        ];
    }

    private static IEnumerable<object> After(SheetContent sheet)
    {
        var say = sheet.Say;
        yield return say.Say("after.out");
        if (!sheet.IsSplit)
        {
            yield return say.Say("after.trim-last");
            yield break;
        }
        yield return say.Say("after.trim");
        yield return say.Say("after.press");
    }
}
