using System.Collections.Immutable;
using System.Xml.Linq;

namespace Splitter.Outputs.Sheets;

/// <summary>Thread by thread and part by part: how much, and how long.</summary>
internal static class AmountsSection
{
    /// <summary>Thread by thread.</summary>
    internal static XElement Of(SheetContent sheet) =>
        Html.Element(
            "section",
            Html.Element("h2", sheet.Say.Say("amounts.title")),
            Threads(sheet),
            Html.Classed(
                "p",
                "note",
                sheet.Say.Say(
                    "amounts.thread-note",
                    ("waste", $"{(int)Math.Round(100 * Rates.ThreadWaste)}\u00a0%"),
                    ("thickness", sheet.Numbers.Fine(sheet.Recipe.Cloth.Thickness)),
                    ("bobbin", sheet.Numbers.Thread(sheet.Work.BobbinMetres))
                )
            )
        );

    /// <summary>Part by part.</summary>
    internal static XElement PartsOf(SheetContent sheet)
    {
        var machine = sheet.Recipe.Machine;
        return Html.Element(
            "section",
            Times(sheet),
            Html.Classed(
                "p",
                "note",
                sheet.Say.Say(
                    "amounts.time-note",
                    ("speed", Texts.Numbers.Count(machine.Speed)),
                    ("stop", Seconds(machine.Stop)),
                    ("trim", Seconds(machine.Trim)),
                    ("hooping", Texts.Numbers.Time(machine.Hooping / 60.0))
                )
            )
        );
    }

    private static XElement Threads(SheetContent sheet)
    {
        var (say, threads) = (sheet.Say, sheet.Work.Threads);
        var lengths = sheet.Numbers.Threads(threads.Select(t => t.Metres));
        var times = Texts.Numbers.Times(threads.Select(t => t.Minutes));
        return Html.Table(
            say.Say("amounts.threads"),
            [
                say.Say("column.thread"),
                say.Say("column.length"),
                say.Say("column.stitches"),
                say.Say("column.sewing"),
                say.Say("column.parts"),
            ],
            threads.Select(
                (thread, i) =>
                    new object?[]
                    {
                        Chip.Of(sheet, thread.Thread),
                        lengths.Rows[i],
                        Texts.Numbers.Count(thread.Stitches),
                        times.Rows[i],
                        Ranges(sheet, thread.Letters),
                    }
            ),
            [say.Say("column.all"), lengths.All, Texts.Numbers.Count(sheet.Work.Stitches), times.All, ""]
        );
    }

    private static XElement Times(SheetContent sheet)
    {
        var (say, work) = (sheet.Say, sheet.Work);
        var hoopings = Texts.Numbers.Times(sheet.Parts.Select(_ => Rates.HoopingMinutes(sheet.Recipe.Machine, 1)));
        var lengths = sheet.Numbers.Threads(sheet.Parts.Select(part => part.Figures.StepMetres.Sum()));
        return Html.Table(
            say.Say("amounts.times"),
            [
                say.Say("column.part"),
                say.Say("column.stitches"),
                say.Say("column.stops"),
                say.Say("column.trims"),
                say.Say("column.length"),
                say.Say("column.hooping"),
                say.Say("column.machine"),
            ],
            sheet.Parts.Select(
                (part, i) =>
                    new object?[]
                    {
                        Html.Element("a", new XAttribute("href", $"#part-{part.Part.Letter}"), part.Part.Letter),
                        Texts.Numbers.Count(part.Figures.Counts.Stitches),
                        Texts.Numbers.Count(part.Figures.Counts.Stops),
                        Texts.Numbers.Count(part.Figures.Counts.Trims),
                        lengths.Rows[i],
                        hoopings.Rows[i],
                        sheet.PartTimes.Rows[i],
                    }
            ),
            [
                say.Say("column.all"),
                Texts.Numbers.Count(work.Stitches),
                Texts.Numbers.Count(work.Stops),
                Texts.Numbers.Count(work.Trims),
                lengths.All,
                hoopings.All,
                sheet.PartTimes.All,
            ]
        );
    }

    /// <summary>Three parts or more that follow each other are told by the first and the last: A–C, E.</summary>
    private static string Ranges(SheetContent sheet, ImmutableArray<string> letters)
    {
        var runs = sheet
            .Parts.Select((part, i) => (part.Part.Letter, Number: i))
            .Where(part => letters.Contains(part.Letter))
            .Select((part, i) => (part.Letter, Run: part.Number - i))
            .GroupBy(part => part.Run, part => part.Letter)
            .Select(run => run.ToList());
        return string.Join(", ", runs.Select(run => run.Count > 2 ? $"{run[0]}–{run[^1]}" : string.Join(", ", run)));
    }

    private static string Seconds(int seconds) => $"{Texts.Numbers.Count(seconds)}\u00a0s";
}
