using System.Collections.Immutable;
using System.Xml.Linq;
using Splitter.Artwork;

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
            Html.Element(
                "p",
                say.Say(
                    "cover-joins.which",
                    ("lines", numbers.Fine(Noticed.InLines)),
                    ("fills", numbers.Fine(Noticed.InFills)),
                    ("most", Texts.Numbers.Count(JoinToCover.Most))
                ),
                " ",
                Worst(sheet, joins)
            ),
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
                            say.Say("column.over"),
                            say.Say("column.motif"),
                        ],
                        joins.Select(
                            (join, i) =>
                                new object?[]
                                {
                                    $"{i + 1}",
                                    Parts(sheet, join.Parts),
                                    numbers.Rough(join.Motif.Centre.X),
                                    numbers.Rough(join.Motif.Centre.Y),
                                    Misfit(sheet, join.Misfit),
                                    Over(sheet, join.Over),
                                    numbers.RoughSize(join.Motif.Width, join.Motif.Height),
                                }
                        )
                    )
                )
        );
    }

    /// <summary>Where the largest figure of the overview is found in this list, or that it does not show.</summary>
    private static string Worst(SheetContent sheet, ImmutableArray<JoinToCover> joins)
    {
        var worst = JoinToCover.Worst(sheet.Plan)!;
        var parts = ("parts", Parts(sheet, [worst.Earlier, worst.Later]));
        var misfit = ("misfit", Misfit(sheet, worst.Within95));
        foreach (var (i, join) in joins.Index())
            if (join.Hides(worst))
                return sheet.Say.Say("cover-joins.worst", parts, misfit, ("number", $"{i + 1}"));
        return sheet.Say.Say(
            "cover-joins.worst-hidden",
            parts,
            misfit,
            ("left", sheet.Numbers.Rough(worst.Weakest.X)),
            ("top", sheet.Numbers.Rough(worst.Weakest.Y))
        );
    }

    private static string Misfit(SheetContent sheet, int misfit) =>
        $"{sheet.Numbers.Misfit(misfit)}{Texts.Numbers.Space}{sheet.Numbers.Unit}";

    /// <summary>What is divided, in words that a person has.</summary>
    private static string Over(SheetContent sheet, Shape shape) =>
        sheet.Say.Say(
            shape switch
            {
                FillShape => "join.fill",
                SatinShape => "join.satin",
                _ => "join.run",
            },
            ("thread", sheet.Drawing.Threads[shape.Thread].Name)
        );

    private static string Parts(SheetContent sheet, ImmutableArray<int> parts) =>
        string.Join('–', parts.Select(i => sheet.Plan.Hoopings[i].Letter));
}
