using Splitter.Artwork.Tapes;
using Splitter.Tapes;

namespace Splitter.Tests.Artwork.Tapes;

/// <summary>Tapes that are no designs but large are refused, and neither time nor memory runs out before.</summary>
public sealed class LargeTapeTests
{
    /// <summary>Rows one way and rows across, again and again on one place: each lies over all before it.</summary>
    [Fact]
    public void TooManyObjectsOnEachOtherAreRefused()
    {
        var tape = new HandTape();
        for (var i = 0; i <= 20_000; i++)
        for (var row = 0; row < 4; row++)
        for (var hole = 0; hole < 3; hole++)
        {
            var (along, across) = ((row % 2 == 0 ? hole : 2 - hole) * 2, row * 0.4);
            tape.Sew(i % 2 == 0 ? (along, across) : (across, along));
        }
        var made = HandTape.Make(tape.Bytes, 1, 70, 70);
        var refused = Assert.Single(made.Diagnostics);
        Assert.Equal("SPL2203", refused.Code);
    }

    [Fact]
    public void TooManyRecordsAreRefused()
    {
        var bytes = new byte[TapeHeader.Length + (1_000_002 * 3)];
        for (var at = TapeHeader.Length; at < bytes.Length; at += 3)
            bytes[at + 2] = 0x03;
        bytes[^1] = 0xF3;
        bytes[TapeHeader.Length] = 1;
        var refused = Assert.Single(HandTape.Make(bytes, 1, 70, 70).Diagnostics);
        Assert.Equal("SPL2202", refused.Code);
    }

    /// <summary>A raster of single stitches below a fill: what hides them comes last.</summary>
    [Fact]
    public void WhatAFillHidesMayBeMuch()
    {
        var tape = new HandTape();
        for (var y = 0.0; y < 20; y += 0.1)
        for (var x = 0.0; x < 40; x += 0.1)
            tape.Jump(x, y, 1);
        tape.Rows(0, 0, 40, 20);
        var sheet = TapeSheet.Of(tape.Tape);
        var found = sheet.Blocks.SelectMany(TapeObjects.Of).ToList();
        Assert.Equal(80_000, found.SelectMany(o => o.Phases).Count(p => p.Use == PhaseUse.Underlay));
    }
}
