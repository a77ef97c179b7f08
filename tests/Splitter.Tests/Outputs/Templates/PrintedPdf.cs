using SkiaSharp;

namespace Splitter.Tests.Outputs.Templates;

/// <summary>A PDF as programs see it that know nothing of us: poppler's and qpdf's.</summary>
internal sealed class PrintedPdf : IDisposable
{
    /// <summary>Pixels of a millimetre: 254 to the inch.</summary>
    internal const int PixelsPerMillimetre = 10;

    private readonly string folder = Directory.CreateTempSubdirectory("splitter-pdf-").FullName;

    internal PrintedPdf(ReadOnlySpan<byte> pdf) => File.WriteAllBytes(Path.Combine(folder, "a.pdf"), pdf);

    internal static void SkipWithout(string program, string package) =>
        Skip.IfNot(
            (Environment.GetEnvironmentVariable("PATH") ?? "")
                .Split(Path.PathSeparator)
                .Any(folder => File.Exists(Path.Combine(folder, program))),
            $"{program} is not installed (Debian package {package})."
        );

    public void Dispose() => Directory.Delete(folder, recursive: true);

    /// <summary>What a program says; it must not complain.</summary>
    internal async Task<string> Says(string program, params string[] arguments)
    {
        var ran = await Processes.Run(folder, null, program, arguments);
        Assert.True(ran.ExitCode == 0 && ran.Error.Length == 0, $"{program}: {ran}");
        return ran.Output;
    }

    internal Task<string> Text(int page) => Says("pdftotext", "-f", $"{page}", "-l", $"{page}", "a.pdf", "-");

    /// <summary>A page of 254 pixels an inch, drawn when first asked for.</summary>
    internal async Task<SKBitmap> Page(int page)
    {
        var name = Path.Combine(folder, $"{page}");
        if (!File.Exists($"{name}.png"))
            await Says("pdftoppm", "-r", "254", "-f", $"{page}", "-l", $"{page}", "-png", "-singlefile", "a.pdf", name);
        return SKBitmap.Decode($"{name}.png");
    }
}
