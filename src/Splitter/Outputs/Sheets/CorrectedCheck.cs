using System.Xml.Linq;
using Splitter.Correcting;
using Splitter.Parts;

namespace Splitter.Outputs.Sheets;

/// <summary>What the crosses should meet that a moved part begins with, and how far off each was before.</summary>
internal sealed class CorrectedCheck(SheetContent sheet, Part part, Correction correction)
{
    /// <summary>
    /// A place was read before the move and is read again, each time with the recipe's error of reading both ways:
    /// 19 times in 20 both together are off by less than this times that error (Rayleigh's distribution: the square
    /// root of 2 ln 20, times that of 2).
    /// </summary>
    private const double ReadTwice = 3.46;

    internal XElement Write()
    {
        var say = sheet.Say;
        var table = new AlignmentTable(sheet, part);
        return Html.Classed(
            "div",
            "check",
            Html.Table(
                say.Say("check.title"),
                [
                    say.Say("column.cross"),
                    say.Say("column.meets"),
                    say.Say("column.good"),
                    say.Say("corrected.was-off"),
                ],
                part.Hooping.Alignments.Zip(
                    correction.Checked,
                    (cross, offset) =>
                        new object?[]
                        {
                            Texts.Numbers.Count(part.Hooping.Alignments.IndexOf(cross) + 1),
                            table.Meets(cross),
                            sheet.Numbers.Fine(
                                Math.Min(
                                    AlignmentLimit.Of(sheet, part, cross),
                                    correction.Move.Residual + (ReadTwice * sheet.Recipe.Registration.Reading)
                                )
                            ),
                            string.Join(", ", WasOff(offset)),
                        }
                )
            )
        );
    }

    private IEnumerable<string> WasOff(MeasuredOffset offset)
    {
        if (offset.Right != 0 || offset.Up == 0)
            yield return Way(offset.Right, "corrected.right", "corrected.left");
        if (offset.Up != 0)
            yield return Way(offset.Up, "corrected.up", "corrected.down");
    }

    private string Way(int length, string one, string other) =>
        $"{sheet.Numbers.Fine(Math.Abs(length))} {sheet.Say.Say(length < 0 ? other : one)}";
}
