using System.Globalization;
using System.Text.RegularExpressions;
using SkiaSharp;
using Splitter.Geometry;
using Splitter.Outputs.Templates;
using Splitter.Recipes;

namespace Splitter.Tests.Outputs.Templates;

/// <summary>Pages and control rules, measured by programs that are not ours.</summary>
public sealed partial class TemplatePaperTests(HedgeTemplate template) : IClassFixture<HedgeTemplate>
{
    private const int Dark = 128;

    /// <summary>ISO 216: A4 is 210 x 297 mm. ANSI/ASME Y14.1: size A is 8.5 x 11 in. 72 points are an inch.</summary>
    [SkippableTheory]
    [InlineData(Paper.A4, 210 / 25.4 * 72, 297 / 25.4 * 72)]
    [InlineData(Paper.Letter, 612, 792)]
    internal async Task PagesAreAsLargeAsPaper(Paper paper, double shorter, double longer)
    {
        PrintedPdf.SkipWithout("pdfinfo", "poppler-utils");
        var says = await template.Printed(paper).Says("pdfinfo", "-f", "1", "-l", "99", "a.pdf");
        var pages = PageSize().Matches(says);
        Assert.Equal(1 + HedgeTemplate.Tilings(paper).SelectMany(t => t.Printed).Count(), pages.Count);
        Assert.All(
            pages,
            page =>
            {
                var sides = new[] { Number(page, "width"), Number(page, "height") }.Order().ToList();
                Assert.Equal(shorter, sides[0], 0.01);
                Assert.Equal(longer, sides[1], 0.01);
            }
        );
    }

    [SkippableTheory]
    [InlineData(Paper.A4)]
    [InlineData(Paper.Letter)]
    internal async Task QpdfHasNothingToSay(Paper paper)
    {
        PrintedPdf.SkipWithout("qpdf", "qpdf");
        var says = await template.Printed(paper).Says("qpdf", "--check", "a.pdf");
        Assert.Contains("No syntax or stream encoding errors found", says, StringComparison.Ordinal);
        Assert.DoesNotContain("WARNING", says, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>100 mm are 1000 pixels of 254 to the inch, 4 in are 1016.</summary>
    [SkippableTheory]
    [InlineData(Paper.A4)]
    [InlineData(Paper.Letter)]
    internal async Task ControlRulesAreTrueOnEverySheet(Paper paper)
    {
        PrintedPdf.SkipWithout("pdftoppm", "poppler-utils");
        var sheets = HedgeTemplate.Tilings(paper).SelectMany(t => t.Printed).Count();
        for (var page = 1; page <= sheets + 1; page++)
        {
            using var drawn = await template.Printed(paper).Page(page);
            // The rules stand in the middle of what lies between the window and the margin; long ticks reach 3 mm off.
            var line = drawn.Height - Pixels(SheetForm.Margin + (SheetForm.Foot / 2));
            var (from, to) = (Pixels(SheetForm.Margin) - 5, Pixels(SheetForm.Margin) + 1030);
            Assert.InRange(Spread(from, to, x => drawn.GetPixel(x, line - 23)), 999, 1001);
            Assert.InRange(Spread(from, to, x => drawn.GetPixel(x, line + 23)), 1015, 1017);
        }
    }

    /// <summary>A printer may feed paper unevenly: the cover has the rules upright, too.</summary>
    [SkippableFact]
    public async Task UprightRulesOfTheCoverAreTrue()
    {
        PrintedPdf.SkipWithout("pdftoppm", "poppler-utils");
        using var drawn = await template.Printed(Paper.A4).Page(1);
        // The first line from the left that is as long.
        var line = Enumerable.Range(0, drawn.Width).First(x => Top(drawn, x) is not null);
        var top = Top(drawn, line)!.Value;
        Assert.InRange(Spread(top - 5, top + 1025, y => drawn.GetPixel(line - 23, y)), 999, 1001);
        Assert.InRange(Spread(top - 5, top + 1025, y => drawn.GetPixel(line + 23, y)), 1015, 1017);
    }

    /// <summary>Many printers leave up to 6 mm white (common practice, no source).</summary>
    [SkippableTheory]
    [InlineData(Paper.A4)]
    [InlineData(Paper.Letter)]
    internal async Task NothingIsPrintedNearTheEdgeOfThePaper(Paper paper)
    {
        PrintedPdf.SkipWithout("pdftoppm", "poppler-utils");
        var sheets = HedgeTemplate.Tilings(paper).SelectMany(t => t.Printed).Count();
        for (var page = 1; page <= sheets + 1; page++)
        {
            using var drawn = await template.Printed(paper).Page(page);
            var (width, height, pixels) = (drawn.Width, drawn.Height, drawn.Pixels);
            const int Margin = 6 * PrintedPdf.PixelsPerMillimetre;
            var inked = 0;
            for (var i = 0; i < pixels.Length; i++)
            {
                var (y, x) = Math.DivRem(i, width);
                if (x < Margin || y < Margin || x >= width - Margin || y >= height - Margin)
                    inked += pixels[i].Green > 250 ? 0 : 1;
            }
            Assert.True(inked == 0, $"page {page} has {inked} pixels of ink in its margin");
            Assert.Contains(pixels, p => p.Green < Dark);
        }
    }

    /// <summary>From the middle of the first dark stretch to the middle of the last.</summary>
    private static double Spread(int from, int to, Func<int, SKColor> pixel)
    {
        var dark = Enumerable.Range(from, to - from).Where(i => pixel(i).Red < Dark).ToList();
        var first = dark.TakeWhile((at, i) => at == dark[0] + i).ToList();
        var last = dark.AsEnumerable().Reverse().TakeWhile((at, i) => at == dark[^1] - i).ToList();
        return last.Average() - first.Average();
    }

    /// <summary>The first stretch of a column that is dark over 4 in, if there is one.</summary>
    private static int? Top(SKBitmap drawn, int column)
    {
        var length = 0;
        for (var y = 0; y < drawn.Height; y++)
        {
            length = drawn.GetPixel(column, y).Red < Dark ? length + 1 : 0;
            if (length == 1016)
                return y - length + 1;
        }
        return null;
    }

    private static int Pixels(int micrometres) => micrometres * PrintedPdf.PixelsPerMillimetre / Units.Millimetre;

    private static double Number(Match page, string name) =>
        double.Parse(page.Groups[name].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(
        @"^Page +\d+ size: +(?<width>[\d.]+) x (?<height>[\d.]+) pts",
        RegexOptions.Multiline | RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex PageSize();
}
