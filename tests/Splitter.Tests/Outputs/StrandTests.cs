using System.Collections.Immutable;
using CsCheck;
using SkiaSharp;
using Splitter.Geometry;
using Splitter.Outputs;
using Splitter.Outputs.Pictures;
using Splitter.Outputs.Pictures.Strands;

namespace Splitter.Tests.Outputs;

/// <summary>Thread drawn as thread.</summary>
public sealed class StrandTests
{
    private static readonly Colour Cloth = Colour.Of("#f4efe4");

    private static Picture Sewn(Colour thread, params ImmutableArray<Point>[] lines)
    {
        var canvas = new Canvas();
        canvas.Cloth(new(0, 0, 30_000, 30_000), Cloth);
        canvas.Thread([.. lines], thread);
        return canvas.ToPicture(30_000, 30_000, "sewn");
    }

    /// <summary>Wherever stitches lie, no pixel changes farther off than thread and shadow are wide.</summary>
    [Fact]
    public void NoThreadLiesFartherOutThanItsStitches() =>
        Gen.Select(Gen.Int[8_000, 22_000], Gen.Int[8_000, 22_000], (x, y) => new Point(x, y))
            .Array[1, 12]
            .Holds(
                (Point[] points) =>
                {
                    var bare = Raster.InTrueScale(Sewn(Cloth), 5);
                    var sewn = Raster.InTrueScale(Sewn(new(0, 0, 0), [.. points]), 5);
                    var reach = Box.Around(points).Grown((Strand.Width / 2) + Strand.ShadowReach + 200);
                    var changed = 0;
                    for (var i = 0; i < sewn.Pixels.Length; i++)
                        if (sewn.Pixels[i] != bare.Pixels[i])
                        {
                            changed++;
                            var at = new Point(i / 3 % sewn.Width * 200, i / 3 / sewn.Width * 200);
                            Assert.True(reach.Contains(at), $"{at} is outside {reach}");
                        }
                    Assert.True(changed > 0);
                },
                cases: 20
            );

    /// <summary>Thread wholly beside the picture, on any side of it, changes nothing; what reaches in is drawn.</summary>
    [Theory]
    [InlineData(-9_000, 15_000)]
    [InlineData(39_000, 15_000)]
    [InlineData(15_000, -9_000)]
    [InlineData(15_000, 39_000)]
    [InlineData(-9_000, -9_000)]
    [InlineData(39_000, 39_000)]
    public void ThreadBesideThePictureIsNotDrawn(int x, int y)
    {
        var bare = Raster.InTrueScale(Sewn(Cloth), 5);
        var beside = Raster.InTrueScale(
            Sewn(new(0, 0, 0), ImmutableArray.Create(new Point(x, y), new(x + 2000, y + 1000))),
            5
        );
        Assert.True(bare.Pixels.SequenceEqual(beside.Pixels));
        var across = Raster.InTrueScale(
            Sewn(new(0, 0, 0), ImmutableArray.Create(new Point(x, y), new(15_000, 15_000))),
            5
        );
        Assert.False(bare.Pixels.SequenceEqual(across.Pixels));
    }

    /// <summary>
    /// A filled square looks like its thread: light and shade leave its mean colour within 13 % of white's range in every
    /// channel whichever way its rows run, and within 9 % on average of four ways.
    /// </summary>
    [Theory]
    [InlineData("#fffaf0")]
    [InlineData("#b03a2e")]
    [InlineData("#1b3a5c")]
    [InlineData("#f2b544")]
    [InlineData("#101014")]
    public void AFilledSquareHasTheColourOfItsThread(string thread)
    {
        var colour = Colour.Of(thread);
        var squares = new[] { (1.0, 0.0), (0.0, 1.0), (0.8, 0.6), (0.6, -0.8) }
            .Select(way => Raster.InTrueScale(Sewn(colour, Rows(way.Item1, way.Item2)), 10))
            .ToList();
        foreach (var (channel, own) in new[] { colour.Red, colour.Green, colour.Blue }.Index())
        {
            var off = squares.Select(square => Mean(square, channel, 100, 200) - own).ToList();
            Assert.All(off, by => Assert.InRange(by, -0.13 * 255, 0.13 * 255));
            Assert.InRange(off.Average(), -0.09 * 255, 0.09 * 255);
        }
    }

    [Fact]
    public void RowsAcrossTheLightAreBrighterThanRowsAlongIt()
    {
        var colour = Colour.Of("#6d7f8f");
        var across = Mean(Raster.InTrueScale(Sewn(colour, Rows(0.8, -0.6)), 10), 1, 100, 200);
        var along = Mean(Raster.InTrueScale(Sewn(colour, Rows(0.6, 0.8)), 10), 1, 100, 200);
        Assert.InRange(across - along, 8, 60);
    }

    /// <summary>Dark, bright, dark across a single thread, and the ridge lies towards the light.</summary>
    [Fact]
    public void AStrandIsDarkerAtItsSidesThanInTheMiddle()
    {
        var raster = Raster.Of(
            Sewn(Colour.Of("#808080"), ImmutableArray.Create<Point>(new(5_000, 15_000), new(25_000, 15_000))),
            3000
        );
        var column = Enumerable
            .Range(0, Strand.Width / 10)
            .Select(i => (int)raster.Pixels[(((1500 - (Strand.Width / 20) + i) * raster.Width) + 1500) * 3])
            .ToList();
        var brightest = column.IndexOf(column.Max());
        Assert.InRange(brightest, column.Count / 4, (column.Count / 2) - 1);
        Assert.True(column[0] < column[brightest] - 30 && column[^1] < column[brightest] - 30);
    }

    /// <summary>Light comes from the upper left: dark cloth beside the lower right of a bright thread, none beside the other.</summary>
    [Fact]
    public void AStrandCastsItsShadowAwayFromTheLight()
    {
        var raster = Raster.InTrueScale(
            Sewn(new(255, 255, 255), ImmutableArray.Create<Point>(new(5_000, 15_000), new(25_000, 15_000))),
            20
        );
        var cloth = Raster.InTrueScale(Sewn(new(255, 255, 255)), 20);
        var (above, below) = (Darker(300 - 6), Darker(300 + 5));
        Assert.Equal(0, above);
        Assert.InRange(below, Strand.Shadow * 200 / 100, Strand.Shadow * 255 / 100);

        int Darker(int row) => cloth.Pixels[((row * 600) + 300) * 3] - raster.Pixels[((row * 600) + 300) * 3];
    }

    /// <summary>Later thread of the same colour casts none, so that parts meet unseen; of another colour it does.</summary>
    [Fact]
    public void ThreadCastsNoShadowOnItsOwnColour()
    {
        var (one, other) = (Colour.Of("#2b8c95"), Colour.Of("#2b8c96"));
        Assert.True(Least(one) > Least(other) + 10);

        int Least(Colour above)
        {
            var canvas = new Canvas();
            canvas.Thread([Rows(1, 0)], one);
            canvas.Thread(
                [
                    [new(28_000, 28_000), new(29_000, 28_000)],
                ],
                new(255, 0, 0)
            );
            canvas.Thread(
                [
                    [new(15_000, 10_000), new(15_000, 20_000)],
                ],
                above
            );
            var raster = Raster.InTrueScale(canvas.ToPicture(30_000, 30_000, "sewn"), 20);
            return Enumerable
                .Range(290, 30)
                .SelectMany(x => Enumerable.Range(250, 100).Select(y => (int)raster.Pixels[(((y * 600) + x) * 3) + 1]))
                .Min();
        }
    }

    /// <summary>What a painter drew before is not seen again.</summary>
    [Fact]
    public void APainterThatIsUsedAgainDrawsTheSame()
    {
        var (wide, small) = (
            Sewn(Colour.Of("#b03a2e"), Rows(0.8, 0.6)),
            Sewn(Colour.Of("#1b3a5c"), ImmutableArray.Create<Point>(new(12_000, 14_000), new(15_000, 16_000)))
        );
        var painters = new StrandPainters();
        Raster.InTrueScale(wide, 10, painters).Dispose();
        Assert.Equal(
            Raster.InTrueScale(small, 10).Pixels.ToArray(),
            Raster.InTrueScale(small, 10, painters).Pixels.ToArray()
        );
    }

    /// <summary>Turns between rows and a zigzag make no stretches of their own; a bend does.</summary>
    [Fact]
    public void StitchesThatTheLightFallsOnAlikeAreOneStretch()
    {
        ImmutableArray<Point> bent =
        [
            .. Enumerable.Range(0, 5).Select(i => new Point(i * 3000, i % 2 * 400)),
            .. Enumerable.Range(1, 5).Select(i => new Point(12_000 + (i * 1800), i * 2400)),
        ];
        Assert.Equal([(0, 4), (4, 9)], LitStretch.Of(bent).Select(s => (s.First, s.Last)));
        ImmutableArray<Point> column = [.. Enumerable.Range(0, 20).Select(i => new Point(i % 2 * 3000, i * 200))];
        Assert.Single(LitStretch.Of(column));
    }

    /// <summary>What an independent reader (Skia) sees is what was drawn, but for the palette.</summary>
    [Fact]
    public void ThePaletteShowsWhatWasDrawn()
    {
        var raster = Raster.InTrueScale(Sewn(Colour.Of("#b03a2e"), Rows(0.8, 0.6)), 10);
        using var read = SKBitmap.Decode(PngWriter.WriteIndexed(raster));
        Assert.Equal((raster.Width, raster.Height), (read.Width, read.Height));
        var pixels = read.Pixels;
        for (var i = 0; i < pixels.Length; i++)
            Assert.True(
                Math.Abs(pixels[i].Red - raster.Pixels[i * 3]) <= 16
                    && Math.Abs(pixels[i].Green - raster.Pixels[(i * 3) + 1]) <= 16
                    && Math.Abs(pixels[i].Blue - raster.Pixels[(i * 3) + 2]) <= 16,
                $"pixel {i}"
            );
    }

    [Fact]
    public void ManyColoursStillMakeAPalette() =>
        Gen
            .Byte.Array[3 * 5000]
            .Holds(
                pixels =>
                {
                    var palette = new Palette(pixels);
                    var indices = new byte[5000];
                    palette.Index(pixels, indices);
                    return palette.Colours.Length == 256 && indices.Distinct().Count() == 256;
                },
                cases: 3
            );

    [Fact]
    public void TheFinishedPieceIsAsReviewed() =>
        Golden.Check(Golden.Source("Outputs", "Cases", "two-seas-finished.svg"), File("finished.svg"));

    [Fact]
    public void ItsPixelsAreAsReviewed() =>
        Golden.Check(Golden.Source("Outputs", "Cases", "two-seas-finished.png"), File("finished.png"));

    [Fact]
    public void HoweverManyThreadsWorkTheFilesAreTheSame()
    {
        var two = OutputRenderer.Render(
            HandMade.Request with
            {
                Jobs = 2,
            },
            HandMade.Job,
            HandMade.Plan,
            HandMade.Parts,
            []
        );
        Assert.Equal(
            HandMade.Set.Files.Select(f => (f.Path, Convert.ToHexString(f.Bytes.Span))),
            two.Select(f => (f.Path, Convert.ToHexString(f.Bytes.Span)))
        );
        Assert.Contains("small/part-A.png", two.Select(f => f.Path));
    }

    private static ReadOnlySpan<byte> File(string name) =>
        HandMade.Set.Files.Single(f => f.Path == $"small/{name}").Bytes.Span;

    /// <summary>More than 20 mm square: rows 0.4 mm apart, stitches of 4 mm, each row shifted by a third.</summary>
    private static ImmutableArray<Point> Rows(double x, double y)
    {
        var rows = ImmutableArray.CreateBuilder<Point>();
        for (var row = -30; row <= 30; row++)
        {
            var stitches = Enumerable
                .Range(-4, 8)
                .Select(i => (Along: (i * 4000.0) + (((row % 3) + 3) % 3 * 1333), Across: row * 400.0))
                .Select(p =>
                    Point.FromMillimetres(
                        15 + (((p.Along * x) - (p.Across * y)) / 1000),
                        15 + (((p.Along * y) + (p.Across * x)) / 1000)
                    )
                );
            rows.AddRange(row % 2 == 0 ? stitches : stitches.Reverse());
        }
        return rows.ToImmutable();
    }

    /// <summary>Of a square of pixels.</summary>
    private static double Mean(Raster raster, int channel, int from, int to)
    {
        double sum = 0;
        for (var y = from; y < to; y++)
        for (var x = from; x < to; x++)
            sum += raster.Pixels[(((y * raster.Width) + x) * 3) + channel];
        return sum / ((to - from) * (to - from));
    }
}
