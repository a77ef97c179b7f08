using System.Diagnostics;
using System.Globalization;
using System.Xml.Linq;
using Microsoft.Playwright;

namespace Splitter.BrowserTests;

/// <summary>Pages as they come out of a printer, read back by poppler's <c>pdftotext</c>.</summary>
internal static class PrintedPages
{
    private const string Program = "/usr/bin/pdftotext";

    /// <summary>The style's margin: 12 mm in points of 72 to the inch. Page numbers stand in it.</summary>
    private const double Margin = 12 / 25.4 * 72;

    /// <summary>How far down each page has words, as a share of the height between the margins.</summary>
    internal static async Task<List<double>> Filled(IPage page)
    {
        Skip.IfNot(File.Exists(Program), "pdftotext is not installed (Debian package poppler-utils).");
        var file = Path.Combine(Directory.CreateTempSubdirectory("splitter-pages-").FullName, "a.pdf");
        await File.WriteAllBytesAsync(file, await page.PdfAsync(new() { PreferCSSPageSize = true }));
        using var reading = Process.Start(
            new ProcessStartInfo(Program, ["-bbox", file, "-"])
            {
                RedirectStandardOutput = true,
                UseShellExecute = false,
            }
        )!;
        var text = await reading.StandardOutput.ReadToEndAsync();
        await reading.WaitForExitAsync();
        return [.. XDocument.Parse(text).Descendants().Where(e => e.Name.LocalName == "page").Select(Filled)];
    }

    private static double Filled(XElement page)
    {
        var bottom = Number(page, "height") - Margin;
        var words = page.Elements().Select(word => Number(word, "yMax")).Where(y => y <= bottom);
        return (words.DefaultIfEmpty(Margin).Max() - Margin) / (bottom - Margin);
    }

    private static double Number(XElement element, string name) =>
        double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);
}
