using System.Globalization;
using Splitter.Geometry;
using Splitter.Outputs.Pdf;
using Splitter.Outputs.Pictures;
using Splitter.Recipes;

namespace Splitter.Tests.Outputs.Templates;

public sealed class TemplateTests(HedgeTemplate template) : IClassFixture<HedgeTemplate>
{
    [Fact]
    public void TheFileIsNamedAfterItsPaper() =>
        Assert.Contains("small/template-A4.pdf", HedgeTemplate.Set.Files.Select(f => f.Path));

    /// <summary>A second run, where numbers have commas and another sign, gives the same bytes.</summary>
    [Fact]
    public void NoCultureChangesTheBytes()
    {
        var here = HedgeTemplate.Set.Files.Single(f => f.Path.EndsWith(".pdf", StringComparison.Ordinal)).Bytes;
        var before = CultureInfo.CurrentCulture;
        var other = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        (other.NumberFormat.NumberDecimalSeparator, other.NumberFormat.NegativeSign) = (",", "minus ");
        try
        {
            CultureInfo.CurrentCulture = other;
            Assert.True(here.Span.SequenceEqual(HedgeTemplate.Write(Paper.A4)));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    /// <summary>The L leaves a sheet empty; what is sewn lies on the others' own ground, all of it.</summary>
    [Theory]
    [InlineData(Paper.A4)]
    [InlineData(Paper.Letter)]
    internal void EmptySheetsAreLeftOutAndNothingElseIs(Paper paper)
    {
        var design = HedgeTemplate.Tilings(paper)[0];
        Assert.Contains(design.Sheets, s => s.Number == 0);
        var printed = Polygons.Union(design.Printed.Select(s => Region.Of(s.Own)));
        Assert.All(
            HedgeTemplate.Drawing.Shapes,
            shape => Assert.True(Polygons.Subtract(shape.Footprint, printed).IsEmpty, shape.Id)
        );
        Assert.All(HedgeTemplate.Set.Plan.Corners, c => Assert.Contains(design.Printed, s => s.Own.Contains(c.At)));
        Assert.All(
            design.Sheets.Where(s => s.Number == 0),
            s =>
                Assert.True(
                    HedgeTemplate.Drawing.Shapes.All(shape =>
                        Polygons.Intersect(shape.Footprint, Region.Of(s.Own)).IsEmpty
                    )
                )
        );
    }

    /// <summary>A mark lies on both of its sheets, and well inside: half a mark cannot be laid on another.</summary>
    [Theory]
    [InlineData(Paper.A4)]
    [InlineData(Paper.Letter)]
    internal void MarksLieOnBothSheets(Paper paper)
    {
        foreach (var tiling in HedgeTemplate.Tilings(paper))
        foreach (var mark in tiling.Marks)
            Assert.Equal(
                [mark.First, mark.Second],
                tiling.Printed.Where(s => s.Shown.Grown(-4 * Units.Millimetre).Contains(mark.At)).Select(s => s.Number)
            );
    }

    /// <summary>Words are words: a program finds the corners of a part on its sheet, and the empty sheet on the map.</summary>
    [SkippableFact]
    public async Task WordsCanBeFound()
    {
        PrintedPdf.SkipWithout("pdftotext", "poppler-utils");
        var tilings = HedgeTemplate.Tilings(Paper.A4);
        var printed = template.Printed(Paper.A4);
        var cover = await printed.Text(1);
        Assert.Contains("Print at 100 %", cover, StringComparison.Ordinal);
        Assert.Equal(tilings[0].Sheets.Count(s => s.Number == 0), cover.Split("empty, left out").Length - 1);
        var plan = HedgeTemplate.Set.Plan;
        foreach (var (hooping, i) in plan.Hoopings.Select((h, i) => (h, i)))
        {
            var words = await printed.Text(HedgeTemplate.PageOf(tilings[i + 1].Printed.First()));
            Assert.Contains($"Part {hooping.Letter}", words, StringComparison.Ordinal);
            Assert.All(
                hooping.Takes.Concat(hooping.Gives).Select(c => plan.Corners[c].Id),
                id => Assert.Contains(id, words, StringComparison.Ordinal)
            );
        }
    }

    /// <summary>Everything that a template can hold, shine-through too: poppler's pixels against ours.</summary>
    [SkippableTheory]
    [InlineData(Turn.None)]
    [InlineData(Turn.Quarter)]
    internal async Task PdfAndPngShowTheSame(Turn turn)
    {
        PrintedPdf.SkipWithout("pdftoppm", "poppler-utils");
        var canvas = new Canvas();
        canvas.Area(new Box(0, 0, 60_000, 60_000), Colour.Of("#fbfaf7"));
        canvas.Area(new Box(10_000, 5_000, 30_000, 50_000), Colour.Of("#1b3a5c"), 40);
        canvas.Line(400, Colour.Of("#b03a2e"), 100, new(12_000, 12_000), new(40_000, 30_000), new(12_000, 30_400));
        canvas.Line(900, Colour.Ink, 60, new(5_000, 55_000), new(55_000, 48_000), new(50_000, 20_000));
        canvas.Label("Corner (A1) \\ 4,5", new(8_000, 20_000), 4_000, Colour.Of("#c2185b"));
        var text = new Box(6_000, 13_000, 58_000, 23_000);
        var picture = canvas.ToPicture(60_000, 60_000, "Ährenkranz");
        var ours = Raster.Of(picture, 600);
        var page =
            turn == Turn.None
                ? new PdfPage(picture, [])
                : new PdfPage(
                    new Canvas().ToPicture(60_000, 60_000, "turned"),
                    [
                        new(
                            new(new(0, 0, 60_000, 60_000), picture.Items),
                            turn,
                            new(0, 60_000),
                            new(0, 0, 60_000, 60_000)
                        ),
                    ]
                );
        using var printed = new PrintedPdf(PdfWriter.Write(picture.Title, [page]));
        Assert.Contains("Ährenkranz", await printed.Says("pdfinfo", "a.pdf"), StringComparison.Ordinal);
        using var theirs = await printed.Page(1);
        Assert.Equal((ours.Width, ours.Height), (theirs.Width, theirs.Height));
        double sum = 0,
            ink = 0,
            letters = 0;
        for (var y = 0; y < 600; y++)
        for (var x = 0; x < 600; x++)
        {
            // Turned by a quarter, what lies right on the drawing lies at the top.
            var pixel = turn == Turn.None ? theirs.GetPixel(x, y) : theirs.GetPixel(y, 599 - x);
            var green = ours.Pixels[(((y * 600) + x) * 3) + 1];
            // Poppler sets letters on whole pixels: of these only the ink is compared.
            if (text.Contains(new Point(x * 100, y * 100)))
                (ink, letters) = (ink + 255 - green, letters + 255 - pixel.Green);
            else
                sum += Math.Abs(pixel.Green - green);
        }
        Assert.InRange(sum / (600 * 600), 0, 0.5);
        Assert.InRange(letters, 0.98 * ink, 1.02 * ink);
    }
}
