using System.Text;
using CsCheck;
using SkiaSharp;
using Splitter.Checking;
using Splitter.Outputs.Tapes;
using Splitter.Tests.Outputs;

namespace Splitter.Tests.Checking;

public sealed class TapeReportTests
{
    [Fact]
    public void ATapeIsReportedAsItWillBeSewn()
    {
        var tape = HandMade.Set.Files.Single(f => f.Path == "small/part-A.dst").Bytes;
        var report = TapeReport.Read("part-A.dst", tape.Span).Value;
        Assert.Equal("Two seas A", report.Label);
        Assert.Equal((45, 2, 3), (report.Stitches, report.Trims, report.Stops));
        Assert.Equal([25, 11, 3, 6], report.Steps.AsEnumerable());
        Assert.Equal((-25.0, -35.0, 22.0, 35.0), (report.LeftMm, report.BottomMm, report.RightMm, report.TopMm));
        // 45.8 mm are sewn in four equal stitches, since a record holds 12.1 mm.
        Assert.Equal(11.5, report.LongestStitchMm, 1);
    }

    [Fact]
    public void ItsPicturesDecode()
    {
        var tape = HandMade.Set.Files.Single(f => f.Path == "small/part-B.dst").Bytes;
        var report = TapeReport.Read("part-B.dst", tape.Span).Value;
        using var png = SKBitmap.Decode(report.ToPng());
        Assert.Equal((report.Picture.Width / 100, report.Picture.Height / 100), (png.Width, png.Height));
        Assert.StartsWith("<svg ", Encoding.UTF8.GetString(report.ToSvg()), StringComparison.Ordinal);
    }

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
                    return report.ToSvg().Length > 0
                        && report.ToPng().Length > 0
                        && report.Stitches == all.Count(r => r.Command == TapeCommand.Stitch);
                },
                cases: 10
            );
    }
}
