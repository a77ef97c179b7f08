using System.Buffers;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Xml.Linq;
using SkiaSharp;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;
using Splitter.Recipes;
using Splitter.Texts;

namespace Splitter.Tests.Outputs;

public sealed class PictureTests
{
    private static byte[] File(string name) =>
        HandMade.Set.Files.Single(f => f.Path == $"small/{name}").Bytes.ToArray();

    [Theory]
    [InlineData("part-A.svg")]
    [InlineData("part-B.svg")]
    [InlineData("overview.svg")]
    [InlineData("finished.svg")]
    public void PicturesAreXmlInTrueScale(string name)
    {
        var svg = XDocument.Parse(Encoding.UTF8.GetString(File(name))).Root!;
        var width = svg.Attribute("width")!.Value;
        var height = svg.Attribute("height")!.Value;
        Assert.EndsWith("mm", width, StringComparison.Ordinal);
        Assert.Equal($"0 0 {width[..^2]} {height[..^2]}", svg.Attribute("viewBox")!.Value);
    }

    /// <summary>
    /// The bar that a person holds a rule against: librsvg draws 10 pixels a millimetre at 254 dpi, so 100 mm are 1000
    /// pixels.
    /// </summary>
    [SkippableFact]
    public void TheBarOf100MillimetresMeasures1000PixelsAt254Dpi()
    {
        Skip.IfNot(Renderer.IsThere, "rsvg-convert is not installed (Debian package librsvg2-bin).");
        var canvas = new Canvas();
        ScaleBar.Draw(canvas, new(20_000, 20_000), 200_000, 3000);
        using var drawn = Rendered(SvgWriter.Write(canvas.ToPicture(160_000, 40_000, "bar")), "-d", "254", "-p", "254");
        Assert.Equal((1600, 400), (drawn.Width, drawn.Height));
        var row = Enumerable.Range(0, drawn.Width).Where(x => drawn.GetPixel(x, 201).Alpha > 127).ToList();
        // The outline's pen is as wide outside the bar as inside: 0.15 mm in all.
        Assert.InRange(row.Where(x => x < 1210).Max() - row.Min() + 1, 1000, 1002);
    }

    /// <summary>The room of a picture is lent to one other only, however often it is given back.</summary>
    [Fact]
    public void RoomIsGivenBackOnce()
    {
        const int Size = 1 << 20;
        var raster = new Raster(10, 10, 1000, ArrayPool<byte>.Shared.Rent(Size));
        raster.Dispose();
        raster.Dispose();
        Assert.NotSame(ArrayPool<byte>.Shared.Rent(Size), ArrayPool<byte>.Shared.Rent(Size));
    }

    /// <summary>A thread's name may be cut short, but not what the rings mean.</summary>
    [Theory]
    [InlineData(SheetLanguage.English)]
    [InlineData(SheetLanguage.German)]
    internal void TheSignsOfAPartHaveRoom(SheetLanguage language)
    {
        var say = new Phrasebook(HandMade.Recipe.Output with { Language = language });
        foreach (var sign in new[] { "placement", "corners", "alignment", "next-corners" })
            Assert.InRange(
                StrokeFont.WidthOf(say.Say($"picture.{sign}"), PartPicture.Letters),
                1,
                PartPicture.NameWidth
            );
    }

    [Fact]
    public void TheBarOfAPartIsOneHundredMillimetresLong()
    {
        var text = Encoding.UTF8.GetString(File("part-A.svg"));
        Assert.Contains("aria-label=\"100 mm\"", text, StringComparison.Ordinal);
    }

    [Fact]
    public void ThePngDecodesAndShowsThePage()
    {
        using var picture = SKBitmap.Decode(File("overview.png"));
        var svg = XDocument.Parse(Encoding.UTF8.GetString(File("overview.svg"))).Root!;
        var (width, height) = (Millimetres(svg, "width"), Millimetres(svg, "height"));
        Assert.Equal(1600, picture.Height);
        Assert.Equal(Math.Round(1600 * width / height), picture.Width);
        Assert.Equal(new SKColor(0xfb, 0xfa, 0xf7), picture.GetPixel(1, 1));
        Assert.Contains(new SKColor(0x1b, 0x3a, 0x5c), picture.Pixels);
    }

    /// <summary>Our pixels against librsvg's from the SVG of the same picture: edges are shaded alike, so the mean is close.</summary>
    /// <param name="most">
    /// Steps of 255. Thread in SVG is drawn a stretch of many stitches at a time, without the shade at the needle holes,
    /// and its PNG has a palette.
    /// </param>
    [SkippableTheory]
    [InlineData("overview", 0.5)]
    [InlineData("finished", 1.5)]
    [InlineData("part-A", 1.5)]
    public void PngAndSvgShowTheSame(string name, double most)
    {
        Skip.IfNot(Renderer.IsThere, "rsvg-convert is not installed (Debian package librsvg2-bin).");
        using var ours = SKBitmap.Decode(File($"{name}.png"));
        using var theirs = Rendered(File($"{name}.svg"), "-w", $"{ours.Width}", "-h", $"{ours.Height}");
        Assert.Equal((theirs.Width, theirs.Height), (ours.Width, ours.Height));
        double sum = 0;
        var (one, other) = (ours.Pixels, theirs.Pixels);
        for (var i = 0; i < one.Length; i++)
            sum +=
                Math.Abs(one[i].Red - other[i].Red)
                + Math.Abs(one[i].Green - other[i].Green)
                + Math.Abs(one[i].Blue - other[i].Blue);
        Assert.InRange(sum / (3.0 * one.Length), 0, most);
    }

    /// <summary>Areas that every child can work out, in pixels of 1 mm.</summary>
    [Fact]
    public void AreasAreFilledToAFractionOfAPixel()
    {
        var canvas = new Canvas();
        canvas.Area(new Box(2_500, 2_250, 7_500, 7_750), new(0, 0, 0));
        canvas.Disc(new(30_000, 10_000), 8_000, new(0, 0, 0));
        var raster = Raster.Of(canvas.ToPicture(40_000, 20_000, "areas"), 20);
        Assert.Equal((40, 20), (raster.Width, raster.Height));
        Assert.Equal(5 * 5.5, Dark(raster, 0, 20), 1);
        Assert.Equal(Math.PI * 64, Dark(raster, 20, 40), 0.01 * Math.PI * 64);
    }

    [Fact]
    public void ALineIsAsWideAsItsPenWithRoundEnds()
    {
        var canvas = new Canvas();
        canvas.Line(4_000, new(0, 0, 0), 100, new(10_000, 10_000), new(30_000, 10_000));
        var raster = Raster.Of(canvas.ToPicture(40_000, 20_000, "line"), 200);
        Assert.Equal(((4 * 20) + (Math.PI * 4)) * 100, Dark(raster, 0, 400), 0.01 * 9000);
    }

    [Fact]
    public void EveryPrintableLetterHasItsOwnForm()
    {
        var forms = Enumerable
            .Range(33, 94)
            .Select(c =>
                string.Join(";", StrokeFont.Set($"{(char)c}", default, 12_000).Select(l => string.Join(" ", l)))
            )
            .ToList();
        Assert.Equal(94, forms.Distinct(StringComparer.Ordinal).Count());
        Assert.All(Enumerable.Range(33, 94), c => Assert.True(Glyphs.Strokes.ContainsKey((char)c), $"{(char)c}"));
    }

    [Fact]
    public void DashesCoverHalfOfALineAndKeepItsCorners()
    {
        var dashes = Dashed.Cut([new(0, 0), new(10_000, 0), new(10_000, 10_000)], 3_000, 3_000);
        Assert.Equal(
            [
                [new(0, 0), new(3_000, 0)],
                [new(6_000, 0), new(9_000, 0)],
                [new(10_000, 2_000), new(10_000, 5_000)],
                [new(10_000, 8_000), new(10_000, 10_000)],
            ],
            dashes.Select(d => d.ToArray())
        );
    }

    [Fact]
    public void OnlyTheKindsThatAreAskedForAreMade() =>
        Assert.Equal(
            ["small/part-A.dst", "small/part-B.dst", "small/manifest.json", "small/SHA256SUMS"],
            HandMade.SetOf(HandMade.Parts, OutputKind.Tape).Files.Select(f => f.Path)
        );

    private static double Dark(Raster raster, int from, int to)
    {
        double sum = 0;
        for (var y = 0; y < raster.Height; y++)
        for (var x = from; x < to; x++)
            sum += 1 - (raster.Pixels[((y * raster.Width) + x) * 3] / 255.0);
        return sum;
    }

    private static double Millimetres(XElement svg, string name) =>
        double.Parse(svg.Attribute(name)!.Value[..^2], CultureInfo.InvariantCulture);

    private static SKBitmap Rendered(byte[] svg, params string[] options)
    {
        var file = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
        try
        {
            System.IO.File.WriteAllBytes(file, svg);
            using var process = Process.Start(
                new ProcessStartInfo("rsvg-convert", [.. options, file])
                {
                    RedirectStandardOutput = true,
                    UseShellExecute = false,
                }
            )!;
            using var png = new MemoryStream();
            process.StandardOutput.BaseStream.CopyTo(png);
            process.WaitForExit();
            Assert.Equal(0, process.ExitCode);
            return SKBitmap.Decode(png.ToArray());
        }
        finally
        {
            System.IO.File.Delete(file);
        }
    }
}
