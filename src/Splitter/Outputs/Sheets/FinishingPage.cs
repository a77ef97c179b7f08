using System.Collections.Immutable;
using System.Xml.Linq;

namespace Splitter.Outputs.Sheets;

/// <summary>After the last part: marks out, joins looked at, the piece pressed.</summary>
internal static class FinishingPage
{
    internal static XElement Of(SheetContent sheet, WorkMap map, ImmutableArray<JoinToCover> joins)
    {
        var say = sheet.Say;
        var left = Left(sheet);
        var steps = new List<object>();
        if (left.Count > 0)
            steps.Add(
                say.Say("finish.corners", ("count", Texts.Numbers.Count(left.Count)), ("corners", say.Listed(left)))
            );
        if (sheet.Plan.Hoopings.Any(h => !h.Alignments.IsEmpty))
            steps.Add(say.Say("finish.crosses"));
        steps.Add(say.Say("finish.stabilizer"));
        if (sheet.Plan.Joins.Length > 0)
            steps.Add(say.Say("finish.joins"));
        steps.Add(say.Say("finish.ends"));
        steps.Add(say.Say("finish.press"));
        return Html.Classed(
            "section",
            "part",
            new XAttribute("id", "finishing"),
            Html.Element("h2", say.Say("finish.title")),
            Html.Ticks(steps),
            sheet.Plan.Joins.IsEmpty ? null : Covers(sheet, map, joins)
        );
    }

    /// <summary>Corners that no step has had taken out, by their names.</summary>
    private static List<string> Left(SheetContent sheet)
    {
        var gone = sheet.Parts.SelectMany(p => p.Part.TakenOut).ToHashSet(StringComparer.Ordinal);
        return [.. sheet.Plan.Corners.Select(c => c.Id).Where(id => !gone.Contains(id))];
    }

    private static XElement Covers(SheetContent sheet, WorkMap map, ImmutableArray<JoinToCover> joins)
    {
        var (say, numbers) = (sheet.Say, sheet.Numbers);
        return Html.Element(
            "section",
            Html.Element("h3", say.Say("cover-joins.title")),
            Html.Element("p", joins.IsEmpty ? say.Say("cover-joins.none") : say.Say("cover-joins.some")),
            sheet.Recipe.Cloth.Stretch.IsNone ? Html.Element("p", say.Say("cover-joins.stiff")) : null,
            Html.Element("p", say.Say("cover-joins.how")),
            joins.IsEmpty
                ? null
                : Html.Classed(
                    "div",
                    "pictures",
                    map.Places(say.Say("cover-joins.picture"), joins.Select(j => j.Motif)),
                    Html.Table(
                        say.Say("cover-joins.table"),
                        [
                            say.Say("column.number"),
                            say.Say("column.parts"),
                            say.Say("column.left"),
                            say.Say("column.top"),
                            say.Say("column.misfit"),
                            say.Say("column.motif"),
                        ],
                        joins.Select(
                            (join, i) =>
                                new object?[]
                                {
                                    $"{i + 1}",
                                    Parts(sheet, join),
                                    numbers.Rough(join.Motif.Centre.X),
                                    numbers.Rough(join.Motif.Centre.Y),
                                    $"{numbers.Misfit(join.Misfit)}{Texts.Numbers.Space}{numbers.Unit}",
                                    numbers.RoughSize(join.Motif.Width, join.Motif.Height),
                                }
                        )
                    )
                )
        );
    }

    private static string Parts(SheetContent sheet, JoinToCover join) =>
        $"{sheet.Plan.Hoopings[join.Earlier].Letter}–{sheet.Plan.Hoopings[join.Later].Letter}";
}
