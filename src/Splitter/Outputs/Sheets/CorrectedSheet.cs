using System.Xml.Linq;
using Splitter.Correcting;
using Splitter.Outputs.Sheets.Watching;
using static System.FormattableString;

namespace Splitter.Outputs.Sheets;

/// <summary>
/// The page of a part that was moved in the hoop: how, what comes before it is sewn, its steps, and how it will fit.
/// </summary>
internal sealed class CorrectedSheet(SheetContent sheet, Correction correction)
{
    private readonly Texts.Phrasebook say = sheet.Say;

    private ListedPart Listed => sheet.Parts[0];

    internal static byte[] Write(SheetContent sheet, Correction correction) =>
        new CorrectedSheet(sheet, correction).Write();

    private byte[] Write() =>
        WorkSheet.Page(
            sheet,
            say.Say("corrected.page", ("title", sheet.Recipe.Title), ("part", Listed.Part.Letter)),
            Html.Element("header", Html.Element("h1", say.Say("corrected.title", ("part", Listed.Part.Letter)))),
            Html.Element("section", Moved().Select(text => Html.Element("p", text))),
            Html.Element(
                "figure",
                new HoopView(sheet, Listed.Part).Draw(
                    say.Say("part.hoop-view", ("part", Listed.Part.Letter)),
                    new WorkMap(sheet).Artwork()
                )
            ),
            Before(),
            new StepSection(sheet, Listed)
            {
                Moved = new CorrectedCheck(sheet, Listed.Part, correction).Write(),
            }.Write(),
            WatchSection.Of(sheet, Listed.Part),
            Html.Element("p", say.Say("corrected.after", ("part", Listed.Part.Letter))),
            correction.Joins.IsEmpty ? null : Joins()
        );

    private IEnumerable<string> Moved()
    {
        var move = correction.Move;
        yield return say.Say(
            "corrected.moved",
            ("right", sheet.Numbers.Fine(Math.Abs(move.Right))),
            ("sideways", say.Say(move.Right < 0 ? "corrected.left" : "corrected.right")),
            ("up", sheet.Numbers.Fine(Math.Abs(move.Up))),
            ("upwards", say.Say(move.Up < 0 ? "corrected.down" : "corrected.up")),
            ("angle", sheet.Numbers.Degrees(Math.Abs(move.Degrees))),
            ("way", say.Say(move.Degrees < 0 ? "corrected.anticlockwise" : "corrected.clockwise"))
        );
        if (move.Verdict == Verdict.Stretched)
            yield return say.Say("corrected.followed", ("warp", Longer(move.Warp)), ("weft", Longer(move.Weft)));
        yield return say.Say("corrected.rest", ("residual", sheet.Numbers.Fine(move.Residual)));
        yield return say.Say("corrected.only");
    }

    private string Longer(double share) =>
        say.Say(
            share < 0 ? "corrected.shorter" : "corrected.longer",
            ("share", sheet.Numbers.Percent(Math.Abs(share)))
        );

    private XElement Before()
    {
        var tape = Listed.Files.FirstOrDefault(f => f.EndsWith(".dst", StringComparison.Ordinal));
        var steps = new List<object> { say.Say("corrected.stay"), say.Say("corrected.off") };
        steps.Add(say.Say("corrected.load", ("file", tape ?? Listed.Part.Letter)));
        steps.Add(say.Say("before.thread", ("thread", sheet.NameOf(Listed.Part.Steps[0].Thread))));
        return Html.Element("section", Html.Element("h2", say.Say("corrected.before")), Html.Ticks(steps));
    }

    private XElement Joins() =>
        Html.Element(
            "section",
            Html.Table(
                say.Say("corrected.joins"),
                [
                    say.Say("corrected.join"),
                    say.Say("corrected.planned"),
                    say.Say("corrected.now"),
                    say.Say("corrected.covers"),
                ],
                correction.Joins.Select(join =>
                    new object?[]
                    {
                        Invariant($"{Letter(join.Before.Earlier)}–{Letter(join.Before.Later)}"),
                        sheet.Numbers.Fine(join.Before.Within95),
                        sheet.Numbers.Fine(join.After.Within95),
                        join.After.IsCovered
                            ? sheet.Numbers.Fine(join.After.Covers)
                            : say.Say("corrected.uncovered", ("covers", sheet.Numbers.Fine(join.After.Covers))),
                    }
                )
            ),
            Html.Element("p", say.Say("corrected.share"))
        );

    private string Letter(int hooping) => sheet.Plan.Hoopings[hooping].Letter;
}
