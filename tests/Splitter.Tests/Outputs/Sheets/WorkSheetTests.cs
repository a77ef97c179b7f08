using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Splitter.Outputs.Sheets;
using Splitter.Parts;
using Splitter.Recipes;
using Splitter.Tapes;

namespace Splitter.Tests.Outputs.Sheets;

/// <summary>The page stands alone, says all that the tape asks for, and can be read without eyes for colour.</summary>
public sealed partial class WorkSheetTests
{
    public static TheoryData<string> Languages => ["en", "de"];

    private static PartSet SetIn(string language) =>
        (language == "de" ? SheetSamples.Segel : SheetSamples.Sails).Sets.Single();

    [Theory]
    [InlineData("en", SheetLanguage.English)]
    [InlineData("de", SheetLanguage.German)]
    internal void ASmallSheetIsAsReviewed(string code, SheetLanguage language) =>
        Golden.Check(
            Golden.Source("Outputs", "Cases", $"two-seas.{code}.html"),
            Encoding.UTF8.GetString(SheetSamples.HandMadeIn(language))
        );

    /// <summary>Steps and stops are those of the tape, in its order, and each action has a box of its own.</summary>
    [Theory]
    [MemberData(nameof(Languages))]
    public void EveryStopOnTheTapeHasItsInstruction(string language)
    {
        var set = SetIn(language);
        var page = SheetSamples.PageOf(set);
        // None of what a part may ask for is missing here, or this would prove nothing.
        Assert.True(set.Parts.Length > 2);
        Assert.Equal(
            Enum.GetValues<StepKind>(),
            set.Parts.SelectMany(p => p.Steps).Select(s => s.Kind).Distinct().Order()
        );
        foreach (var part in set.Parts)
        {
            var tape = set.Files.Single(f => f.Path.EndsWith($"/part-{part.Letter}.dst", StringComparison.Ordinal));
            var stops = TapeCounts.Of(TapeReader.Read(tape.Path, tape.Bytes.Span).Value).Stops;
            Assert.Equal(part.Steps.Length - 1, stops);
            Assert.True(stops > 1);
            var steps = Classed(Page(page, part.Letter), "step").ToList();
            Assert.Equal(part.Steps.Length, steps.Count);
            foreach (var (step, shown) in part.Steps.Zip(steps))
            {
                var ticks = Classed(shown, "stop").Single().Elements("ul").Where(u => Has(u, "ticks"));
                Assert.Equal(step.Actions, ticks.SelectMany(u => u.Elements("li")).Select(Text));
                Assert.Equal(step.Number < part.Steps.Length, !step.Actions.IsEmpty);
                Assert.All(step.Actions, action => Assert.True(action.Length > 10, action));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Languages))]
    public void EveryTackIsCountedInAndOut(string language)
    {
        var set = SetIn(language);
        var page = SheetSamples.PageOf(set);
        foreach (var part in set.Parts.Skip(1))
        {
            var ids = part.Hooping.Takes.Select(i => set.Plan.Corners[i].Id).ToList();
            Assert.NotEmpty(ids);
            var counts = Classed(Page(page, part.Letter), "tacks").ToList();
            // Once when it is set, once more for when it has to be set again.
            Assert.Equal(part.Hooping.Alignments.IsEmpty ? 1 : 2, counts.Count);
            foreach (var row in counts.Select(c => c.Elements("p").Skip(1).ToList()))
            {
                Assert.Equal(2, row.Count);
                Assert.All(row, p => Assert.Equal(ids, p.Elements("label").Select(Text)));
                Assert.All(row, p => Assert.Contains($"{ids.Count} ", p.Value, StringComparison.Ordinal));
                Assert.All(row.SelectMany(p => p.Elements("label")), label => Assert.Single(label.Elements("input")));
            }
            // Told as they go in, and as they come out: in this order, and before anything is sewn on the cloth.
            var actions = part.Steps[0].Actions;
            Assert.Equal(StepKind.Corners, part.Steps[0].Kind);
            var told = actions.Index().Where(a => a.Item.Contains($"{ids.Count} ", StringComparison.Ordinal)).ToList();
            Assert.Equal([0, actions.Length - 1], [told[0].Index, told.Last(t => Out(t.Item)).Index]);
            Assert.All(ids, id => Assert.Contains(id, actions[0], StringComparison.Ordinal));
        }

        bool Out(string action) =>
            action.Contains(
                language == "de" ? "herausziehen und zählen" : "Take out and count",
                StringComparison.Ordinal
            );
        Assert.Empty(Classed(Page(page, "A"), "tacks"));
    }

    /// <summary>What the last page asks to be taken out is what no step has had taken out.</summary>
    [Fact]
    public void NoCornerIsForgotten()
    {
        var set = SetIn("en");
        var finish = Page(SheetSamples.PageOf(set), "finishing")
            .Descendants("li")
            .Select(Text)
            .First()
            .Split([' ', ',', '.']);
        var gone = set.Parts.SelectMany(p => p.TakenOut).ToList();
        foreach (var corner in set.Plan.Corners)
            Assert.Equal(!gone.Contains(corner.Id), finish.Contains(corner.Id));
    }

    /// <summary>Without a second part there is nothing to set, to check or to cover.</summary>
    [Fact]
    public void AWorkOfOnePartHasNoTacks()
    {
        var page = SheetSamples.PageOf(SheetSamples.One.Sets.Single());
        Assert.Equal(
            ["every-hooping", "part-A", "finishing"],
            Classed(page, "part").Select(s => s.Attribute("id")!.Value)
        );
        Assert.Empty(Classed(page, "tacks"));
        Assert.Empty(Classed(page, "check"));
        Assert.Contains("sewn in one part", page.Value, StringComparison.Ordinal);
        Assert.DoesNotContain("1 tacks", page.Value, StringComparison.Ordinal);
        // The cloth is laid on by a mark, since there are no folds.
        Assert.Contains("Mark the middle of part A", page.Value, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Languages))]
    public void ThePageStandsAlone(string language)
    {
        // A picture whose bytes are in the page is no reference to anything else.
        var text = Encoding
            .UTF8.GetString(SheetSamples.FileOf(SetIn(language)))
            .Replace(PictureInPage(language), "", StringComparison.Ordinal);
        Assert.StartsWith("<!DOCTYPE html>\n<html lang=", text, StringComparison.Ordinal);
        Assert.DoesNotContain("http", text, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("src=", text, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("@import", text, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("\r", text, StringComparison.Ordinal);
        var page = SheetSamples.PageOf(SetIn(language));
        var ids = page.Descendants().Attributes("id").Select(a => a.Value).ToList();
        Assert.Equal(ids.Count, ids.Distinct(StringComparer.Ordinal).Count());
        var links = page.Descendants().Attributes("href").Select(a => a.Value);
        Assert.All(links, to => Assert.Contains(to[1..], ids));
        // A browser does not undo XML's escapes in a style.
        Assert.DoesNotMatch("[<>&]", page.Descendants("style").Single().Value);
    }

    /// <summary>The one picture of pixels: the finished piece, with words for those who do not see it.</summary>
    private static string PictureInPage(string language)
    {
        var picture = SheetSamples.PageOf(SetIn(language)).Descendants("img").Single();
        Assert.NotEmpty(picture.Attribute("alt")!.Value);
        var source = picture.Attribute("src")!.Value;
        Assert.StartsWith("data:image/png;base64,", source, StringComparison.Ordinal);
        Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G'], Convert.FromBase64String(source.Split(',')[1])[..4]);
        return $"src=\"{source}\"";
    }

    [Theory]
    [MemberData(nameof(Languages))]
    public void ThePageCanBeHeard(string language)
    {
        var page = SheetSamples.PageOf(SetIn(language));
        Assert.Equal(language, page.Attribute("lang")!.Value);
        Assert.Single(page.Descendants("h1"));
        var level = 0;
        foreach (var heading in page.Descendants().Where(e => Heading().IsMatch(e.Name.LocalName)))
        {
            var next = heading.Name.LocalName[1] - '0';
            Assert.True(next <= level + 1, $"{Text(heading)} is {next - level} deeper than what it is below.");
            level = next;
        }
        Assert.All(
            page.Descendants("svg"),
            svg => Assert.True(svg.Attribute("aria-label")!.Value.Length > 3 && svg.Attribute("role")!.Value == "img")
        );
        Assert.All(page.Descendants("input"), box => Assert.Equal("label", box.Parent!.Name.LocalName));
        Assert.All(page.Descendants("table"), table => Assert.NotEmpty(table.Element("caption")!.Value));
        Assert.All(page.Descendants("th"), th => Assert.NotNull(th.Attribute("scope")));
    }

    /// <summary>
    /// 4.5 to 1 (WCAG 2.1, success criterion 1.4.3, from memory), with the standard's own curve of sRGB: every colour
    /// of text in the style on every ground, and the number on a thread of any colour.
    /// </summary>
    [Fact]
    public void TextStandsOutFromItsGround()
    {
        var style = SheetSamples.PageOf(SetIn("en")).Descendants("style").Single().Value;
        var named = Variable().Matches(style).ToDictionary(m => m.Groups["name"].Value, m => m.Groups["value"].Value);
        foreach (var ground in new[] { "#ffffff", named["wash"] })
        foreach (var ink in new[] { named["ink"], named["soft"], named["warn"], "#0b4a86" })
            Assert.True(Measured(ink, ground) >= 4.5, $"{ink} on {ground}");
        for (var red = 0; red < 256; red += 15)
        for (var green = 0; green < 256; green += 15)
        for (var blue = 0; blue < 256; blue += 15)
        {
            var thread = FormattableString.Invariant($"#{red:x2}{green:x2}{blue:x2}");
            var ink = Chip.Ink(thread) == "#000" ? "#000000" : "#ffffff";
            Assert.True(Measured(ink, thread) >= 4.5, $"{ink} on {thread}");
            // A luminance that is 0.002 off, beside the 0.05 of the standard's flare.
            Assert.InRange(Contrast.Of(ink, thread) / Measured(ink, thread), 0.96, 1.04);
        }
    }

    [Fact]
    public void PaperAndLengthsAreThoseOfTheRecipe()
    {
        var (english, german) = (SheetSamples.PageOf(SetIn("en")), SheetSamples.PageOf(SetIn("de")));
        Assert.Contains("size: A4", english.Descendants("style").Single().Value, StringComparison.Ordinal);
        Assert.Contains("size: letter", german.Descendants("style").Single().Value, StringComparison.Ordinal);
        var (metric, inches) = (english.Value, german.Value);
        Assert.Matches(@"\d\u00a0mm", metric);
        Assert.DoesNotMatch(@"\d\u00a0(in|yd)\b", metric);
        Assert.Matches(@"\d,\d+\u00a0in\b", inches);
        Assert.Matches(@"\d\u00a0yd\b", inches);
        Assert.DoesNotMatch(@"\d\u00a0m\b", inches);
    }

    private static XElement Page(XElement page, string name) =>
        page.Descendants("section")
            .Single(s => (string?)s.Attribute("id") == (name == "finishing" ? name : $"part-{name}"));

    private static IEnumerable<XElement> Classed(XElement inside, string name) =>
        inside.Descendants().Where(e => Has(e, name));

    private static bool Has(XElement element, string name) =>
        ((string?)element.Attribute("class"))?.Split(' ').Contains(name) == true;

    private static string Text(XElement element) => element.Value.Trim();

    private static double Measured(string one, string other)
    {
        var (a, b) = (Luminance(one) + 0.05, Luminance(other) + 0.05);
        return Math.Max(a, b) / Math.Min(a, b);
    }

    private static double Luminance(string colour)
    {
        var rgb = Convert.FromHexString(colour[1..]).Select(c => c / 255.0).Select(Linear).ToArray();
        return (0.2126 * rgb[0]) + (0.7152 * rgb[1]) + (0.0722 * rgb[2]);

        static double Linear(double c) => c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4);
    }

    [GeneratedRegex(@"\Ah[1-6]\z", RegexOptions.None, 1000)]
    private static partial Regex Heading();

    [GeneratedRegex(@"--(?<name>[a-z]+): (?<value>#[0-9a-f]{6})", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Variable();
}
