using Microsoft.Playwright;

namespace Splitter.BrowserTests;

/// <summary>The work sheet as Chromium prints it.</summary>
public sealed class PrintedSheetTests(Browser browser) : IClassFixture<Browser>
{
    /// <summary>
    /// The narrower of A4 (ISO 216) and the lower of Letter less their margins, at the 96 pixels an inch that CSS counts.
    /// </summary>
    private const int PrintedWidth = (int)((210 - (2 * 12)) / 25.4 * 96);

    private const int PrintedHeight = (int)((279.4 - (2 * 12)) / 25.4 * 96);

    [SkippableTheory]
    [InlineData("en")]
    [InlineData("de")]
    public async Task PrintedNothingIsCutOff(string language)
    {
        var page = await browser.Open(
            Sheet.In(language).File,
            options: new()
            {
                ViewportSize = new() { Width = PrintedWidth, Height = PrintedHeight },
            }
        );
        await page.EmulateMediaAsync(new() { Media = Media.Print });
        var tooWide = await page.EvaluateAsync<string[]>(
            """
            () => [...document.querySelectorAll('main *')]
              .filter(e => !e.closest('svg') && e.getBoundingClientRect().right > innerWidth + 1)
              .map(e => e.outerHTML.slice(0, 120))
            """
        );
        Assert.Empty(tooWide);
        var heights = await page.EvaluateAsync<double[]>(
            "() => [...document.querySelectorAll('.step')].map(e => e.getBoundingClientRect().height)"
        );
        Assert.NotEmpty(heights);
        Assert.All(heights, height => Assert.InRange(height, 1, PrintedHeight));
        await WorkSheetTests.NothingToWatch(page);
        Assert.NotEmpty(await page.PdfAsync(new() { PreferCSSPageSize = true }));
    }

    /// <summary>
    /// No page of paper for a few lines: each is at least a quarter full. On a part's last page stand its last steps and
    /// what comes after them, which take 28 % and more.
    /// </summary>
    [SkippableTheory]
    [InlineData("en", false)]
    [InlineData("de", false)]
    [InlineData("en", true)]
    [InlineData("de", true)]
    public async Task PrintedNoPageIsNearlyEmpty(string language, bool colourful)
    {
        var sheet = colourful ? Sheet.ColourfulIn(language) : Sheet.In(language);
        var page = await browser.Open(sheet.File);
        var filled = await PrintedPages.Filled(page);
        Assert.True(filled.Count > sheet.Parts.Length + 3);
        Assert.All(filled, share => Assert.InRange(share, 0.25, 1));
    }
}
