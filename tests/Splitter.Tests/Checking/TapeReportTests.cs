using System.Text;
using CsCheck;
using SkiaSharp;
using Splitter.Checking.Inspecting;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;
using Splitter.Outputs.Pictures.Strands;
using Splitter.Recipes;
using Splitter.Tapes;
using Splitter.Tests.Outputs;

namespace Splitter.Tests.Checking;

public sealed class TapeReportTests
{
    public static TheoryData<string> Views => new(Enum.GetNames<TapeView>());

    private static ReadOnlySpan<byte> File(string name) =>
        HandMade.Set.Files.Single(f => f.Path == $"small/{name}").Bytes.Span;

    private static TapeReport Report(string part, bool withManifest) =>
        TapeReport
            .Read($"parts/{part}.dst", File($"{part}.dst"), withManifest ? File("manifest.json").ToArray() : null)
            .Value;

    [Fact]
    public void ATapeIsReportedAsItWillBeSewn()
    {
        var report = Report("part-A", withManifest: false);
        var counts = report.Counts;
        Assert.Equal("Two seas A", report.Label);
        Assert.Equal((45, 2, 3), (counts.Stitches, counts.Trims, counts.Stops));
        Assert.Equal([25, 11, 3, 6], counts.Steps.AsEnumerable());
        Assert.Equal(new TapeBox(-250, -350, 220, 350), counts.Bounds);
        // 45.8 mm are sewn in four equal stitches, since a record holds 12.1 mm.
        Assert.Equal(115, counts.Longest, 0);
        Assert.Equal(1, report.Trace.Moves.Count(m => m.Trimmed && report.Trace.Bounds.Contains(m.From)) - 1);
    }

    /// <summary>Fill rows of 10 mm, 0.4 mm apart: thread side by side is one layer; a satin's worth of it is two.</summary>
    [Fact]
    public void LayersAreCountedByMass()
    {
        var records = new List<TapeRecord> { new(TapeCommand.Stitch, 0, 2) };
        for (var row = 0; row < 25; row++)
        {
            records.Add(new(TapeCommand.Stitch, row % 2 == 0 ? 100 : -100, 0));
            records.Add(new(TapeCommand.Stitch, 0, 4));
        }
        var report = TapeReport.Read("rows.dst", TapeWriter.Write(new("rows", [.. records]))).Value;
        var inside = report.Grid.Squares.Where(s => s.Column is >= 2 and <= 16 && s.Row is <= -4 and >= -18).ToList();
        Assert.Equal(225, inside.Count);
        // Rows at 0.2, 0.6, 1.0 mm …: those on the line between two squares belong to one of them.
        Assert.Equal(1, inside.Average(report.Grid.LayersOn), 0.05);
        Assert.Equal((25 * 10) + (25 * 0.4), Units.ToMillimetres(report.Trace.Length), 6);
        Assert.Equal(report.LayersMost, report.Grid.Squares.Max(report.Grid.LayersOn));
        Assert.InRange(report.Layers99, 1, report.LayersMost);
        // Each lies in four squares.
        Assert.Equal(51 * 4, report.Grid.Squares.Sum(report.Grid.HolesIn));
    }

    [Theory]
    [MemberData(nameof(Views))]
    public void ItsPicturesAreAsReviewed(string view)
    {
        var report = Report("part-A", withManifest: true);
        Golden.Check(
            Golden.Source("Checking", "Cases", $"two-seas-A-{view.ToLowerInvariant()}.svg"),
            Encoding.UTF8.GetString(report.Draw(Enum.Parse<TapeView>(view), OutputKind.Svg))
        );
    }

    [Theory]
    [MemberData(nameof(Views))]
    public void ItsPicturesDecode(string view)
    {
        var way = Enum.Parse<TapeView>(view);
        var report = Report("part-B", withManifest: false);
        var picture = TapePicture.Of(report, way);
        using var png = SKBitmap.Decode(report.Draw(way, OutputKind.Png));
        Assert.InRange(png.Width, (picture.Width * 12 / 1000) - 1, (picture.Width * 12 / 1000) + 1);
        Assert.Equal(picture.Height * 12 / 1000, png.Height);
    }

    [Fact]
    public void ColoursAreThoseOfAManifestThatSpeaksOfThisTape()
    {
        var known = Report("part-A", withManifest: true).Threads;
        Assert.True(known.AreKnown);
        Assert.Equal(
            ["lines for the folds", "deep water", "brick", "corners for later parts"],
            known.Steps.Select(s => s.Name)
        );
        Assert.Equal("#1b3a5c #b03a2e", $"{known.Steps[1].Colour} {known.Steps[2].Colour}");
        Assert.Equal("deep water", Report("part-B", withManifest: true).Threads.Steps[2].Name);
        Assert.False(Report("part-A", withManifest: false).Threads.AreKnown);
        // Another tape under the same name has other stitches.
        var other = TapeReport.Read("part-A.dst", File("part-B.dst"), File("manifest.json").ToArray()).Value;
        Assert.False(other.Threads.AreKnown);
        Assert.All(other.Threads.Steps, s => Assert.Null(s.Name));
    }

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("{ \"threads\": 3 }")]
    [InlineData("{ \"threads\": [{ \"name\": \"a\", \"color\": \"red\" }], \"parts\": [] }")]
    [InlineData(
        "{ \"threads\": [], \"parts\": [{ \"files\": [\"part-A.dst\"], \"steps\": [{ \"stitches\": 1.5 }] }] }"
    )]
    public void AFileThatIsNoManifestSaysNothing(string text) =>
        Assert.False(
            TapeReport.Read("part-A.dst", File("part-A.dst"), Encoding.UTF8.GetBytes(text)).Value.Threads.AreKnown
        );

    [Fact]
    public void ADamagedTapeGivesDiagnostics() =>
        Assert.Equal("SPL5001", TapeReport.Read("x.dst", "not a tape"u8).Diagnostics.Single().Code);

    [Fact]
    public void WhateverATapeHoldsItIsReportedAndDrawn()
    {
        var records = Gen.Select(
            Gen.Int[0, 2],
            Gen.Int[-121, 121],
            Gen.Int[-121, 121],
            (command, u, v) => new TapeRecord((TapeCommand)command, u, v)
        );
        records
            .Array[0, 100]
            .Holds(
                all =>
                {
                    var read = TapeReport.Read("any.dst", TapeWriter.Write(new("any", [.. all])));
                    if (!read.TryGet(out var report))
                        return !all.Any(r => r.Command == TapeCommand.Stitch);
                    var sewn = all.Count(r => r.Command == TapeCommand.Stitch);
                    return Enum.GetValues<TapeView>().All(v => report.Draw(v, OutputKind.Svg).Length > 0)
                        && report.Draw(TapeView.Density, OutputKind.Png).Length > 0
                        && report.Counts.Stitches == sewn
                        && report.Trace.Runs.Sum(r => r.Points.Length) == sewn
                        && report.Grid.Squares.Sum(report.Grid.HolesIn) == 4 * sewn
                        && report.Trace.Moves.Count(m => m.Trimmed) == report.Counts.Trims;
                },
                cases: 10
            );
    }

    /// <summary>
    /// Each class is darker than the one before by 9 of 100 steps of CIE lightness at least (ISO/CIE 11664-4): grey prints
    /// and eyes that do not tell red from green have nothing else to go by.
    /// </summary>
    [Fact]
    public void LayersAreToldApartWithoutColour()
    {
        var classes = LayerScale.Classes;
        Assert.All(classes.Zip(classes.Skip(1)), pair => Assert.Equal(pair.First.UpTo, pair.Second.From));
        Assert.All(
            classes.Zip(classes.Skip(1)),
            pair => Assert.True(Lightness(pair.First.Colour) - Lightness(pair.Second.Colour) >= 9, pair.Second.Text)
        );

        static double Lightness(Colour c)
        {
            var y = (0.2126 * Linear(c.Red)) + (0.7152 * Linear(c.Green)) + (0.0722 * Linear(c.Blue));
            return (116 * Math.Cbrt(y)) - 16;
        }

        static double Linear(byte value) =>
            value <= 10 ? value / 255.0 / 12.92 : Math.Pow(((value / 255.0) + 0.055) / 1.055, 2.4);
    }

    /// <summary>Rows across the light are brighter than rows along it.</summary>
    [Fact]
    public void DirectionShows()
    {
        var across = LitStitch.Of(new(0, 0), new(4000, -3000)).Light;
        var along = LitStitch.Of(new(0, 0), new(3000, 4000)).Light;
        Assert.True(across.Brightness > along.Brightness + 0.3);
        Assert.Equal(across, LitStitch.Of(new(4000, -3000), new(0, 0)).Light);
    }

    [Fact]
    public void OutlinesOfCellsKeepHolesAndCorners()
    {
        // A ring of eight squares, and one more at its corner.
        var cells = Enumerable.Range(0, 9).Where(i => i != 4).Select(i => new Cell(i % 3, i / 3)).Append(new(3, 3));
        var outlines = CellOutlines.Of([.. cells], Units.Millimetre);
        var region = Polygons.FromRings(outlines.Select(o => new Ring(o)), FillRule.NonZero);
        Assert.Equal(9_000_000, region.Area, 0);
        Assert.All(outlines, o => Assert.True(o.Length >= 4));
    }
}
