using System.Globalization;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Splitter.BrowserTests;

/// <summary>The work sheet in a real browser (Chromium): on a tablet, by keyboard, without script.</summary>
public sealed class WorkSheetTests(Browser browser) : IClassFixture<Browser>
{
    [SkippableTheory]
    [InlineData("en")]
    [InlineData("de")]
    public async Task ThePageAsksForNothingAndHasNoError(string language)
    {
        var (asked, said) = (new List<string>(), new List<string>());
        var page = await browser.Open(Sheet.In(language).File, asked, said);
        foreach (var watch in await page.Locator(".watch").AllAsync())
        {
            await watch.ScrollIntoViewIfNeededAsync();
            await watch.Locator("canvas").First.WaitForAsync();
        }
        Assert.Equal([new Uri(Sheet.In(language).File).AbsoluteUri], asked);
        Assert.Empty(said);
    }

    /// <summary>Accessibility, judged by axe-core's rules.</summary>
    [SkippableTheory]
    [InlineData("en")]
    [InlineData("de")]
    public async Task NobodyIsShutOut(string language)
    {
        var page = await browser.Open(Sheet.In(language).File);
        foreach (var watch in await page.Locator(".watch").AllAsync())
        {
            await watch.ScrollIntoViewIfNeededAsync();
            await watch.Locator("canvas").First.WaitForAsync();
        }
        var found = await page.RunAxe();
        Assert.True(
            found.Violations.Length == 0,
            string.Join("\n", found.Violations.Select(v => $"{v.Id}: {v.Help}, {v.Nodes[0].Html}"))
        );
        Assert.NotEmpty(found.Passes);
    }

    /// <summary>Run, go on at each stop as the machine would be made to, and arrive at the tape's last stitch.</summary>
    [SkippableTheory]
    [InlineData(ReducedMotion.NoPreference)]
    [InlineData(ReducedMotion.Reduce)]
    public async Task ARunReachesTheLastStitchAndStopsWhereTheMachineDoes(ReducedMotion motion)
    {
        var sheet = Sheet.In("en");
        var page = await browser.Open(sheet.File, options: new() { ReducedMotion = motion });
        var watch = await WatchOf(page, sheet, 1);
        var part = sheet.Parts[1];
        await watch.GetByLabel("Speed").SelectOptionAsync("2000");
        await watch.FocusAsync();
        await page.Keyboard.PressAsync("Home");
        var run = watch.GetByRole(AriaRole.Button, new() { Name = "Run", Exact = true });
        for (var stop = 0; stop <= part.Stops; stop++)
        {
            var before = await At(watch);
            // The button changes with the click, and back at the stop: after a few stitches that may be at once.
            await run.ClickAsync();
            await run.WaitForAsync();
            Assert.True(await At(watch) > before);
            var status = await watch.GetByRole(AriaRole.Status).TextContentAsync();
            if (stop < part.Stops)
                Assert.Contains(part.StopTexts[stop], status!.Replace('\u00a0', ' '), StringComparison.Ordinal);
        }
        Assert.Equal(part.Stitches, await At(watch));
    }

    [SkippableFact]
    public async Task ARunCanBePaused()
    {
        var sheet = Sheet.In("en");
        var page = await browser.Open(sheet.File);
        var watch = await WatchOf(page, sheet, 0);
        await watch.GetByLabel("Speed").SelectOptionAsync("5");
        await watch.FocusAsync();
        await page.Keyboard.PressAsync("Home");
        await watch.GetByRole(AriaRole.Button, new() { Name = "Run", Exact = true }).ClickAsync();
        await watch.GetByRole(AriaRole.Button, new() { Name = "Pause", Exact = true }).ClickAsync();
        await watch.GetByRole(AriaRole.Button, new() { Name = "Run", Exact = true }).WaitForAsync();
        Assert.InRange(await At(watch), 0, sheet.Parts[0].Stitches - 1);
    }

    [SkippableFact]
    public async Task TheKeyboardStepsAndJumpsFromStopToStop()
    {
        var sheet = Sheet.In("en");
        var page = await browser.Open(sheet.File);
        var watch = await WatchOf(page, sheet, 0);
        var last = sheet.Parts[0].Stitches;
        Assert.Equal(last, await At(watch));
        await watch.FocusAsync();
        foreach (
            var (key, at) in new[]
            {
                ("ArrowLeft", last - 1),
                ("Shift+ArrowLeft", last - 11),
                ("ArrowRight", last - 10),
                ("End", last),
                ("Home", 0),
                ("ArrowLeft", 0),
            }
        )
        {
            await page.Keyboard.PressAsync(key);
            Assert.Equal(at, await At(watch));
        }
        for (var stop = 0; stop < sheet.Parts[0].Stops; stop++)
        {
            var before = await At(watch);
            await page.Keyboard.PressAsync("PageDown");
            Assert.True(await At(watch) > before);
            Assert.Contains(
                sheet.Parts[0].StopTexts[stop],
                (await watch.GetByRole(AriaRole.Status).TextContentAsync())!.Replace('\u00a0', ' '),
                StringComparison.Ordinal
            );
        }
        await page.Keyboard.PressAsync("PageDown");
        Assert.Equal(last, await At(watch));
    }

    /// <summary>The picture grows: fewer stitches leave more of the cloth's colour.</summary>
    [SkippableFact]
    public async Task WhatIsSewnShows()
    {
        var sheet = Sheet.In("en");
        var page = await browser.Open(sheet.File);
        var watch = await WatchOf(page, sheet, 0);
        var whole = await Inked(watch);
        await watch.FocusAsync();
        await page.Keyboard.PressAsync("Home");
        Assert.Equal(0, await Inked(watch));
        await page.Keyboard.PressAsync("PageDown");
        await page.Keyboard.PressAsync("PageDown");
        Assert.InRange(await Inked(watch), 1, whole - 1);
    }

    [SkippableFact]
    public async Task WithoutScriptThePageIsComplete()
    {
        var sheet = Sheet.In("en");
        var page = await browser.Open(sheet.File, options: new() { JavaScriptEnabled = false });
        var text = (await page.Locator("main").InnerTextAsync()).Replace('\u00a0', ' ');
        foreach (var part in sheet.Parts)
            Assert.Contains($"Part {part.Letter}", text, StringComparison.Ordinal);
        await NothingToWatch(page);
    }

    /// <summary>On a tablet held upright nothing has to be moved sideways.</summary>
    [SkippableTheory]
    [InlineData(820)]
    [InlineData(600)]
    public async Task OnATabletNothingIsCutOff(int width)
    {
        var page = await browser.Open(
            Sheet.In("de").File,
            options: new()
            {
                ViewportSize = new() { Width = width, Height = 1180 },
            }
        );
        Assert.True(await page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= innerWidth"));
    }

    internal static async Task NothingToWatch(IPage page)
    {
        var places = await page.Locator(".watch").AllAsync();
        Assert.NotEmpty(places);
        foreach (var watch in places)
            Assert.False(await watch.IsVisibleAsync());
    }

    private static async Task<ILocator> WatchOf(IPage page, Sheet sheet, int part)
    {
        var watch = page.Locator($"#part-{sheet.Parts[part].Letter} .watch");
        await watch.ScrollIntoViewIfNeededAsync();
        await watch.Locator("canvas").First.WaitForAsync();
        return watch;
    }

    private static async Task<int> At(ILocator watch) =>
        int.Parse(await watch.GetByRole(AriaRole.Slider).InputValueAsync(), CultureInfo.InvariantCulture);

    /// <summary>Pixels of thread.</summary>
    private static Task<int> Inked(ILocator watch) =>
        watch
            .Locator("canvas")
            .First.EvaluateAsync<int>(
                """
                canvas => {
                  const pixels = new Uint32Array(canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height).data.buffer);
                  return pixels.filter(p => p !== pixels[0]).length;
                }
                """
            );
}
