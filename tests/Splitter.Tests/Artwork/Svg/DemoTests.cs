using Splitter.Artwork;
using Splitter.Artwork.Svg;

namespace Splitter.Tests.Artwork.Svg;

/// <summary>The demo drawing against an independent renderer.</summary>
public class DemoTests
{
    /// <summary>Pixels in a millimetre: 0.2 mm a pixel, below the finest line of 0.6 mm.</summary>
    private const int Scale = 5;

    /// <summary>Share of the sheet in which the pictures may differ: 0.005 % is 12 mm².</summary>
    private const double MostDiffering = 5e-5;

    /// <summary>Share of the sheet by which the painted areas may differ: 47 mm² of 2352 cm².</summary>
    private const double MostArea = 2e-4;

    [Fact]
    public void The_demo_reads_without_remarks()
    {
        var sheet = Sheet();
        Assert.Equal((420_000, 560_000), (sheet.Width, sheet.Height));
        var star = Assert.Single(sheet.Elements, e => e.Id == "star-1");
        Assert.Contains("motif", star.Classes);
        Assert.Equal(["star", "star-1", "stars", "scene"], star.Ids.AsEnumerable());
    }

    [SkippableFact]
    public void The_demo_looks_as_the_renderer_shows_it()
    {
        Skip.IfNot(SheetPicture.RendererIsThere, "rsvg-convert is not installed (Debian: librsvg2-bin)");
        using var ours = SheetPicture.Render(SheetPicture.Draw(Sheet()), 420 * Scale, 560 * Scale);
        using var theirs = SheetPicture.Render(File.ReadAllText(Demo), 420 * Scale, 560 * Scale);

        var difference = PictureDifference.Between(ours, theirs);

        Assert.InRange(difference.Differing, 0, MostDiffering);
        Assert.InRange(difference.PaintedByFirst - difference.PaintedBySecond, -MostArea, MostArea);
    }

    private static string Demo => Repository.Path("examples", "artwork", "lighthouse-bay.svg");

    private static Sheet Sheet()
    {
        var result = SvgReader.Read(new("lighthouse-bay.svg", File.ReadAllBytes(Demo)), 420_000);
        Assert.Empty(result.Diagnostics);
        return result.Value;
    }
}
