using System.Globalization;
using System.Text;

namespace Splitter.Tests.Artwork.Svg;

/// <summary>Files made to hurt: each ends with a message, and none with a crash. That they end at all is the test.</summary>
public class HostileTests
{
    [Fact]
    public void Twenty_thousand_nested_groups() =>
        AssertError("SPL2005", Repeat("<g>", 20_000) + Repeat("</g>", 20_000));

    [Fact]
    public void Copies_of_copies_of_copies()
    {
        var body = new StringBuilder("<defs><path id='u0' d='M0 0h1v1z'/>");
        for (var i = 1; i < 40; i++)
            body.Append(CultureInfo.InvariantCulture, $"<g id='u{i}'>")
                .Append(Repeat($"<use href='#u{i - 1}'/>", 10))
                .Append("</g>");
        AssertError("SPL2008", body.Append("</defs><use href='#u39'/>").ToString());
    }

    [Fact]
    public void A_chain_of_copies_longer_than_the_stack()
    {
        var body = new StringBuilder("<path id='u0' d='M0 0h1v1z'/>");
        for (var i = 1; i < 5000; i++)
            body.Append(CultureInfo.InvariantCulture, $"<use id='u{i}' href='#u{i - 1}'/>");
        AssertError("SPL2005", body.ToString());
    }

    [Theory]
    [InlineData("<g id='a'><use href='#a'/></g>")]
    [InlineData("<use id='a' href='#a'/>")]
    [InlineData("<defs><g id='a'><use href='#b'/></g><g id='b'><use href='#a'/></g></defs><use href='#a'/>")]
    [InlineData("<symbol id='a'><use href='#a'/></symbol><use href='#a'/>")]
    [InlineData(
        "<clipPath id='a' clip-path='url(#a)'><path d='M0 0h9v9z'/></clipPath><path clip-path='url(#a)' d='M0 0h9v9z'/>"
    )]
    [InlineData(
        "<clipPath id='a'><path clip-path='url(#a)' d='M0 0h9v9z'/></clipPath><path clip-path='url(#a)' d='M0 0h9v9z'/>"
    )]
    [InlineData(
        "<linearGradient id='a' href='#b'/><linearGradient id='b' href='#a'/><path fill='url(#a)' d='M0 0h9v9z'/>"
    )]
    public void A_circle_of_references_is_remarked(string body) => Assert.Contains("SPL2043", Codes(body));

    [Theory]
    [InlineData("<path d='M0 0L1e60 0L1e60 1e60z'/>", "SPL2066")]
    [InlineData("<rect width='1e300' height='1e300'/>", "SPL2066")]
    [InlineData(
        "<g transform='scale(1e200)'><g transform='scale(1e200)'><rect width='1' height='1'/></g></g>",
        "SPL2066"
    )]
    [InlineData("<path d='MNaN 0L1 1'/>", "SPL2060")]
    [InlineData("<rect width='NaN' height='1'/>", "SPL2062")]
    [InlineData("<path d='M0 0L9 9' stroke='red' stroke-width='1e60'/>", "SPL2066")]
    [InlineData("<path d='M0 0L9 9' stroke='red' stroke-dasharray='1e-9'/>", "SPL2067")]
    [InlineData("<path d='M0 0C1e8 1e8 -1e8 1e8 9 9' fill='none' stroke='red' stroke-dasharray='1'/>", "SPL2066")]
    public void Numbers_out_of_bounds_are_remarked(string body, string code) => Assert.Contains(code, Codes(body));

    /// <summary>
    /// A mitre of this bend is 20,000 times as long as the stroke is wide, 200 m: SVG allows it here, but further than
    /// 20 m nothing is drawn. An even stroke becomes a line, one that is stretched ground.
    /// </summary>
    [Theory]
    [InlineData("")]
    [InlineData("transform='scale(1 1.1)'")]
    public void AMitreThatLeadsTooFarIsABevel(string stretched)
    {
        const string Bend = "d='M0 50L90 50.0045L0 50.009' stroke-width='10' stroke-miterlimit='1e9'";
        var sheet = SheetPicture.Read(Svg($"<path {Bend} fill='none' stroke='red' {stretched}/>")).Value;
        Assert.InRange(SheetPicture.GroundOf(Assert.Single(sheet.Elements)).Bounds.Right, 90_000, 91_000);
    }

    [Theory]
    [InlineData("width='1e60' height='1'")]
    [InlineData("viewBox='0 0 1e-30 1e30'")]
    [InlineData("width='0' height='10'")]
    public void Sheets_out_of_bounds_are_errors(string attributes)
    {
        var result = SheetPicture.Read(
            $"<svg xmlns='http://www.w3.org/2000/svg' {attributes}><path d='M0 0h1v1z'/></svg>"
        );
        Assert.False(result.Succeeded);
        Assert.Contains(result.Diagnostics, d => d.Code is "SPL2007" or "SPL2006");
    }

    [Fact]
    public void A_scribble_of_millions_of_crossings_is_left_out()
    {
        var path = new StringBuilder("M0 0");
        for (var i = 0; i < 4000; i++)
            path.Append(CultureInfo.InvariantCulture, $"L{(i * 37 % 100) / 3.0:F2} {(i % 2 * 90) + (i % 7)}");
        Assert.Contains("SPL2068", Codes($"<path d='{path}'/>"));
    }

    [Fact]
    public void A_scribble_of_a_million_commands_is_left_out()
    {
        var path = new StringBuilder("M0 0");
        for (var i = 0; i < 1_000_000; i++)
            path.Append(CultureInfo.InvariantCulture, $"L{i % 1000 / 10.0:F1} {i / 10_000.0:F3}");
        Assert.Contains("SPL2068", Codes($"<path d='{path}z'/>"));
    }

    [Fact]
    public void A_million_points_too_many()
    {
        var circles = Repeat("<use href='#c'/>", 60_000);
        AssertError("SPL2009", $"<circle id='c' r='3' cx='9' cy='9' transform='scale(9)'/>{circles}");
    }

    [Theory]
    [InlineData(
        "<!DOCTYPE svg [<!ENTITY a 'aaaa'><!ENTITY b '&a;&a;&a;&a;'>]><svg xmlns='http://www.w3.org/2000/svg'>&b;</svg>"
    )]
    [InlineData(
        "<!DOCTYPE svg [<!ENTITY a SYSTEM 'file:///etc/passwd'>]><svg xmlns='http://www.w3.org/2000/svg'>&a;</svg>"
    )]
    [InlineData("<svg xmlns='http://www.w3.org/2000/svg'><g></svg>")]
    [InlineData("<svg xmlns='http://www.w3.org/2000/svg'")]
    [InlineData("")]
    [InlineData("no xml at all")]
    [InlineData("<svg xmlns='http://www.w3.org/2000/svg'>\0</svg>")]
    public void What_is_no_plain_xml_is_an_error(string text)
    {
        var result = SheetPicture.Read(text);
        Assert.False(result.Succeeded);
        Assert.Equal("SPL2002", Assert.Single(result.Diagnostics).Code);
    }

    [Fact]
    public void A_style_sheet_of_twenty_thousand_rules_and_deep_selectors()
    {
        var rules = new StringBuilder("<style>");
        for (var i = 0; i < 20_000; i++)
            rules.Append(CultureInfo.InvariantCulture, $"g g g .c{i} {{ fill: red }} ");
        var deep = Repeat("<g>", 200) + "<path class='c7' d='M0 0h9v9z'/>" + Repeat("</g>", 200);
        var result = SheetPicture.Read(Svg(rules + $"{Repeat("g ", 500)} path {{ fill: blue }}</style>{deep}"));
        Assert.Equal("#ff0000", Assert.Single(result.Value.Elements).Color);
    }

    [Fact]
    public void Thousands_of_remarks_are_cut_short()
    {
        var diagnostics = SheetPicture.Read(Svg(Repeat("<text>x</text>\n", 5000))).Diagnostics;
        Assert.InRange(diagnostics.Length, 2, 101);
        Assert.Contains(diagnostics, d => d.Code == "SPL2019");
    }

    /// <summary>Any bytes give a value or an error with a place, never an exception.</summary>
    [Fact]
    public void A_torn_drawing_is_read_without_harm()
    {
        var demo = File.ReadAllBytes(Golden.Source("Icons", "lighthouse.svg"));
        for (var i = 0; i < demo.Length; i += 13)
        {
            var torn = demo.ToArray();
            torn[i] = (byte)"<>&'\"#(0-eZ\0\xff"[i % 13];
            var result = Splitter.Artwork.Svg.SvgReader.Read(new("torn.svg", torn), 100_000);
            Assert.True(result.Succeeded || !result.Diagnostics.IsEmpty);
        }
    }

    private static void AssertError(string code, string body)
    {
        var result = SheetPicture.Read(Svg(body));
        Assert.False(result.Succeeded);
        Assert.Contains(result.Diagnostics, d => d.Code == code && d.Place.Line > 0);
    }

    private static IEnumerable<string> Codes(string body)
    {
        var result = SheetPicture.Read(Svg(body));
        Assert.True(result.Succeeded);
        return result.Diagnostics.Select(d => d.Code);
    }

    private static string Svg(string body) =>
        $"<svg xmlns='http://www.w3.org/2000/svg' width='100mm' height='100mm' viewBox='0 0 100 100'>{body}</svg>";

    private static string Repeat(string text, int times) => new StringBuilder().Insert(0, text, times).ToString();
}
