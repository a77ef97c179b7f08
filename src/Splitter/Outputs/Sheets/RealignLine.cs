using System.Collections.Immutable;
using System.Xml.Linq;
using Splitter.Parts;

namespace Splitter.Outputs.Sheets;

/// <summary>
/// The command that moves a part onto the sewn work, whole but for what is read in the hoop, to copy or to type. It
/// asks for both ways at each place, so it names corners: crosses on an edge show one way only.
/// </summary>
internal sealed class RealignLine(SheetContent sheet, Part part)
{
    /// <summary>
    /// Two places show a shift and a turn, a third tells a wrong reading; more take longer than they tell.
    /// </summary>
    private const int Most = 3;

    private const int Fewest = 2;

    private readonly ImmutableArray<string> places =
    [
        .. part.Hooping.Takes.Take(Most).Select(i => sheet.Plan.Corners[i].Id),
    ];

    private bool IsEnough => places.Length >= Fewest;

    /// <summary>Null where too few places show both ways.</summary>
    internal XElement? Write() =>
        IsEnough
            ? Html.Classed(
                "div",
                "command",
                Html.Element("p", sheet.Say.Say("check.command", ("places", sheet.Say.Listed(places)))),
                Html.Element("p", Html.Element("code", Line()))
            )
            : null;

    /// <summary>A file that says the same, whole; null where too few places show both ways.</summary>
    internal string? AsFile() =>
        IsEnough
            ? $"{{ part: {part.Letter}, offsets: ["
                + string.Join(", ", places.Select(place => $"{{ at: {place}, right: {Nothing}, up: {Nothing} }}"))
                + "] }"
            : null;

    /// <summary>To be overwritten by what is read.</summary>
    private string Nothing => $"0.0 {sheet.Numbers.Unit}";

    private string Line() =>
        string.Join(
            ' ',
            [
                $"splitter realign {Word(sheet.RecipeFile)} --hoop {Word(sheet.Plan.Hoop.Name)} --part {part.Letter}",
                .. places.Select(place => $"--at {place} {Nothing} right {Nothing} up"),
            ]
        );

    /// <summary>
    /// One word of a command. All usual shells know double quotes; within them those of POSIX and PowerShell still read
    /// some characters, which single quotes leave as they are, but for the quote itself (POSIX.1-2017, Shell Command
    /// Language 2.2).
    /// </summary>
    internal static string Word(string text) =>
        text.All(c => char.IsAsciiLetterOrDigit(c) || c is '.' or '-' or '_') ? text
        : text.IndexOfAny(['$', '`', '"', '\\', '!']) < 0 ? $"\"{text}\""
        : $"'{text.Replace("'", @"'\''", StringComparison.Ordinal)}'";
}
