using CsCheck;
using Splitter.Artwork.Tapes;
using Splitter.Tapes;

namespace Splitter.Tests.Artwork.Tapes;

/// <summary>
/// Tapes at random, cut short and with bits turned over: a drawing or messages, never an exception. A hundred thousand
/// of them: <c>SPLITTER_EXPLORE=50 dotnet test --filter TapeFuzzTests</c>.
/// </summary>
public sealed class TapeFuzzTests
{
    private const int Cases = 2000;

    /// <summary>Outlines take most of the time: every so many tapes get them.</summary>
    private const int Outlined = 16;

    private static readonly Gen<int> Small = Gen.Int[-12, 12];
    private static readonly Gen<int> Any = Gen.Int[-TapeRecord.Longest, TapeRecord.Longest];

    /// <summary>
    /// Stretches as designs have them, so that what is recognised is there: rows, columns, lines, moves, noise.
    /// </summary>
    private static readonly Gen<TapeRecord[]> Stretch = Gen.OneOf(
        from count in Gen.Int[1, 30]
        from along in Any
        from aside in Small
        select Enumerable.Range(0, count).Select(i => Stitch(i % 2 == 0 ? along : -along, aside)).ToArray(),
        from rows in Gen.Int[1, 12]
        from holes in Gen.Int[1, 4]
        from along in Any
        from aside in Small
        select Enumerable
            .Range(0, rows)
            .SelectMany(row =>
                Enumerable.Repeat(Stitch(row % 2 == 0 ? along : -along, 0), holes).Append(Stitch(0, aside))
            )
            .ToArray(),
        Gen.Select(Any, Any, Gen.Int[1, 20], (u, v, count) => Enumerable.Repeat(Stitch(u, v), count).ToArray()),
        Gen.Select(Any, Any, Stitch).Array[1, 20],
        Gen.Select(Small, Small, Stitch).Array[1, 10],
        Gen.Select(Any, Any, (u, v) => new TapeRecord(TapeCommand.Jump, u, v)).Array[1, 5],
        Gen.Const(new[] { new TapeRecord(TapeCommand.Stop, 0, 0) })
    );

    private static readonly Gen<byte[]> Tapes =
        from stretches in Stretch.Array[0, 8]
        select TapeWriter.Write(new("fuzz", [.. stretches.SelectMany(s => s)]));

    private static readonly Gen<byte[]> Turned =
        from tape in Tapes
        from bits in Gen.Select(Gen.Int[0, tape.Length - 1], Gen.Int[0, 7]).Array[1, 6]
        select bits.Aggregate(
            tape,
            (bytes, bit) =>
                [.. bytes[..bit.Item1], (byte)(bytes[bit.Item1] ^ (1 << bit.Item2)), .. bytes[(bit.Item1 + 1)..]]
        );

    private static readonly Gen<byte[]> Short =
        from tape in Tapes
        from length in Gen.Int[0, tape.Length]
        select tape[..length];

    /// <summary>Bytes of which every record is one, whatever it does.</summary>
    private static readonly Gen<byte[]> Noise =
        from header in Gen.Byte.Array[512]
        from records in Gen.Select(Gen.Byte, Gen.Byte, Gen.Byte).Array[0, 120]
        select (byte[])
            [
                .. header,
                .. records.SelectMany(r =>
                    new[] { r.Item1, r.Item2, (byte)(r.Item3 & 0x3C | (r.Item3 < 200 ? 0x03 : 0x83)) }
                ),
                .. new byte[] { 0, 0, 0xF3 },
            ];

    [Fact]
    public void WhateverATapeHoldsItIsReadAndRecognisedOrRefused() =>
        Gen.OneOf(Tapes, Turned, Short, Noise, Gen.Byte.Array[0, 900]).Holds(Recognised, Cases, Convert.ToHexString);

    private static void Recognised(byte[] bytes)
    {
        var read = TapeReader.Read("fuzz.dst", bytes);
        if (!read.TryGet(out var tape))
        {
            Assert.All(read.Diagnostics, d => Assert.Equal("fuzz.dst", d.Place.File));
            return;
        }
        var sheet = TapeSheet.Of(tape);
        Assert.Equal(
            sheet.Blocks.Sum(b => b.Threads.Sum(t => Math.Max(1, t.Holes.Length - 1))),
            sheet
                .Blocks.SelectMany(TapeObjects.Of)
                .SelectMany(o => o.Phases)
                .Sum(p => Math.Max(p.Phase.Phase.To == 0 ? 1 : 0, p.Phase.Phase.To - p.Phase.Phase.From))
        );
        if (bytes.Length % Outlined != 0)
            return;
        var shapes = RecognitionTests.Shapes(sheet);
        // Each hole of the tape is in one shape, in the tape's order.
        Assert.Equal(
            sheet.Blocks.SelectMany(b => b.Threads).SelectMany(t => t.Holes),
            shapes
                .SelectMany(s => s.Original)
                .SelectMany(t => t.Stitches.Skip(t.Start == ThreadArrival.GoesOn ? 1 : 0))
                .Select(s => s.At)
        );
        Assert.All(shapes, s => Assert.False(s.Footprint.IsEmpty));
        Assert.Equal(
            tape.Records.Count(r => r.Command == TapeCommand.Stitch),
            shapes.Sum(s => s.Original.Sum(t => t.OwnStitches))
        );
    }

    private static TapeRecord Stitch(int u, int v) => new(TapeCommand.Stitch, u, v);
}
