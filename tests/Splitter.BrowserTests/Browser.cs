using Microsoft.Playwright;

namespace Splitter.BrowserTests;

/// <summary>Chromium, as a person has it on a tablet; one for all tests of a class.</summary>
public sealed class Browser : IAsyncLifetime
{
    private static readonly string[] Places = ["/usr/bin/chromium", "/usr/bin/chromium-browser"];

    private IPlaywright? playwright;
    private IBrowser? chromium;

    private static string? Program => Places.FirstOrDefault(File.Exists);

    public async Task InitializeAsync()
    {
        if (Program is not { } program)
            return;
        playwright = await Playwright.CreateAsync();
        chromium = await playwright.Chromium.LaunchAsync(
            new() { ExecutablePath = program, Args = ["--no-sandbox"] } // Root in a container has no other way.
        );
    }

    public async Task DisposeAsync()
    {
        if (chromium is not null)
            await chromium.DisposeAsync();
        playwright?.Dispose();
    }

    /// <summary>A sheet opened from a <c>file:</c> address; skips the test where there is no browser.</summary>
    /// <param name="asked">Every address that the page asks for.</param>
    /// <param name="said">What it writes to the console, and errors of its script.</param>
    internal async Task<IPage> Open(
        string file,
        List<string>? asked = null,
        List<string>? said = null,
        BrowserNewContextOptions? options = null
    )
    {
        Skip.If(chromium is null, "Chromium is not installed (Debian package chromium).");
        options ??= new();
        options.ViewportSize ??= new() { Width = 820, Height = 1180 };
        var context = await chromium.NewContextAsync(options);
        var page = await context.NewPageAsync();
        page.Request += (_, request) => asked?.Add(request.Url);
        page.Console += (_, message) => said?.Add(message.Text);
        page.PageError += (_, error) => said?.Add(error);
        await page.GotoAsync(new Uri(file).AbsoluteUri);
        return page;
    }
}
