using System.Collections.Immutable;
using System.Text;
using CsCheck;
using Splitter.Geometry;
using Splitter.Outputs.Tapes;
using Splitter.Parts;
using Splitter.Stitching;
using Splitter.Tapes;

namespace Splitter.Tests.Outputs;

/// <summary>
/// Tapes against the tests' own reader, and their bytes against the trade's table of bits and header fields (common
/// practice, no source).
/// </summary>
public sealed class TapeTests
{
    [Fact]
    public void EveryMoveOfARecordIsReadBackByASecondReader()
    {
        var moves = ImmutableArray.CreateBuilder<TapeRecord>();
        for (var move = -TapeRecord.Longest; move <= TapeRecord.Longest; move++)
        {
            moves.Add(new(TapeCommand.Stitch, move, 0));
            moves.Add(new(TapeCommand.Stitch, 0, move));
            moves.Add(new(TapeCommand.Stitch, move, -move));
        }
        var bytes = TapeWriter.Write(new("every move", moves.ToImmutable()));

        var (u, v) = (0, 0);
        var expected = moves.Select(m => (u += m.U, v += m.V)).ToList();
        Assert.Equal(expected, PlainTape.Steps(bytes).Single().Single());
    }

    /// <summary>Bits by hand from the table: x+1 is bit 0 of the first byte, y+81 bit 5 of the third, and so on.</summary>
    [Theory]
    [InlineData(0, 1, 0, "01 00 03")]
    [InlineData(0, -1, 0, "02 00 03")]
    [InlineData(0, 0, 1, "80 00 03")]
    [InlineData(0, 2, 0, "02 01 03")] // 3 - 1
    [InlineData(0, 121, 121, "A5 A5 27")]
    [InlineData(0, -121, -121, "5A 5A 1B")]
    [InlineData(1, 9, -27, "04 10 83")]
    [InlineData(2, 0, 0, "00 00 C3")]
    public void ARecordHasTheBitsOfTheTable(int command, int u, int v, string bytes)
    {
        Span<byte> written = stackalloc byte[3];
        RecordCode.Write(new((TapeCommand)command, u, v), written);
        Assert.Equal(bytes, Convert.ToHexString(written).Insert(4, " ").Insert(2, " "));
    }

    [Fact]
    public void AMoveLongerThanARecordIsABugOfOurs() =>
        Assert.Throws<InvalidOperationException>(() => RecordCode.Write(new(TapeCommand.Stitch, 122, 0), new byte[3]));

    [Fact]
    public void TheHeaderHasItsFieldsInTheirDigits()
    {
        var tape = new Tape(
            "Two seas A",
            [
                new(TapeCommand.Jump, -100, 50),
                new(TapeCommand.Stitch, 0, 0),
                new(TapeCommand.Stop, 0, 0),
                new(TapeCommand.Stitch, 121, -121),
            ]
        );
        var bytes = TapeWriter.Write(tape);
        var fields =
            "LA:Two seas A      |ST:0000004|CO:001|+X:00021|-X:00100|+Y:00050|-Y:00071|AX:+00021|AY:-00071|MX:+00000|MY:+00000|PD:******|\u001a";
        Assert.Equal(fields.Replace('|', '\r').PadRight(512), Encoding.ASCII.GetString(bytes, 0, 512));
        Assert.Equal(512 + (3 * 5), bytes.Length);
        Assert.Equal([0x00, 0x00, 0xF3], bytes[^3..]);
    }

    [Theory]
    [InlineData("Lighthouse Bay", "A", "Lighthouse Bay A")]
    [InlineData("A title that is far too long", "AB", "A title that AB")]
    [InlineData("Færøerne \u2603", "C", "Faeroerne ? C")]
    [InlineData("Þórshöfn, Ñandú", "A", "Thorshofn, Nan A")]
    public void TheLabelIsPlainAndEndsInTheLetter(string title, string letter, string label) =>
        Assert.Equal(label, TapeLabel.Of(title, letter));

    /// <summary>Random steps and blocks anywhere in the field, in every turn.</summary>
    [Fact]
    public void APartIsReadBackByASecondReaderStitchForStitch()
    {
        var point = from u in Gen.Int[-270, 270] from v in Gen.Int[-370, 370] select (U: u, V: v);
        var block = from points in point.Array[2, 8] from trim in Gen.Bool select (points, trim);
        var parts =
            from steps in block.Array[1, 5].Array[1, 5]
            from turn in Gen.Int[0, 3]
            select (steps, turn: (Turn)(90 * turn));
        parts.Holds(
            sample =>
            {
                var field = HandMade.Field(123.4, -56.7, sample.turn);
                var part = HandMade.Part(
                    HandMade.Hooping("A", field, [], []),
                    [
                        .. sample.steps.Select(step =>
                            (
                                StepKind.Body,
                                (Splitter.Artwork.SewThread?)HandMade.Blue,
                                (string?)null,
                                step.Select(b => new Move(
                                        new(
                                            "shape",
                                            [
                                                .. b.points.Select(p => new Stitch(
                                                    field.ToDesign(new(p.U * 100, p.V * 100)),
                                                    StitchUse.Fill
                                                )),
                                            ]
                                        ),
                                        b.trim
                                    ))
                                    .ToArray()
                            )
                        ),
                    ]
                );
                var steps = PlainTape.Steps(TapeWriter.Write(PartTape.Of(part, "random")));
                Assert.Equal(sample.steps.Length, steps.Count);
                for (var s = 0; s < steps.Count; s++)
                {
                    // A stitch longer than a record is sewn in several; its ends stay, so what was asked for is found in order.
                    var sewn = new Queue<(int, int)>(steps[s].SelectMany(r => r));
                    var last = default((int, int)?);
                    foreach (var b in sample.steps[s])
                    {
                        for (var i = 0; i < b.points.Length; i++)
                        {
                            var p = b.points[i];
                            if (i == 0 && last == p && !b.trim)
                                continue;
                            while (sewn.Dequeue() != p)
                                Assert.True(i > 0 && sewn.Count > 0, "a block begins where none should");
                            last = p;
                        }
                    }
                    Assert.Empty(sewn);
                    Assert.True(steps[s].Count >= 1);
                }
            },
            cases: 300
        );
    }

    [Fact]
    public void TrimsAreRunsOfThreeJumpsAndPlainMovesAreShorter()
    {
        var part = HandMade.Part(
            HandMade.Hooping("A", HandMade.Field(0, 0, Turn.None), [], []),
            (
                StepKind.Body,
                HandMade.Blue,
                null,
                [
                    new(HandMade.Block("a", StitchUse.Run, (0, 0), (1, 0)), false),
                    new(HandMade.Block("b", StitchUse.Run, (1.5, 0), (3, 0)), false),
                    new(HandMade.Block("c", StitchUse.Run, (3.5, 0), (5, 0)), true),
                    new(HandMade.Block("d", StitchUse.Run, (5, 0), (6, 0)), false),
                ]
            )
        );
        var commands = string.Concat(
            PartTape
                .Of(part, "moves")
                .Records.Select(r =>
                    r.Command switch
                    {
                        TapeCommand.Stitch => 's',
                        TapeCommand.Jump => 'j',
                        _ => 'c',
                    }
                )
        );
        Assert.Equal("ssjssjjjsss", commands);
        Assert.Equal(1, TapeCounts.Of(PartTape.Of(part, "moves")).Trims);
    }

    [Fact]
    public void WhatIsWrittenIsReadAgain()
    {
        foreach (var part in HandMade.Parts)
        {
            var tape = PartTape.Of(part, "Two seas");
            var read = TapeReader.Read("part.dst", TapeWriter.Write(tape));
            Assert.Empty(read.Diagnostics);
            Assert.Equal(tape.Label, read.Value.Label);
            Assert.Equal(tape.Records.AsEnumerable(), read.Value.Records);
        }
    }

    [Theory]
    [InlineData(0, "", "SPL5001")]
    [InlineData(511, "", "SPL5001")]
    [InlineData(512, "", "SPL5004")]
    [InlineData(512, "0100030000", "SPL5002", 1)]
    [InlineData(512, "010003", "SPL5007", 1)]
    [InlineData(512, "010003000000000000", "SPL5007", 3)]
    [InlineData(512, "0100030000000000000000F3", "SPL5008", 2)]
    [InlineData(512, "010000", "SPL5003", 1)]
    [InlineData(512, "010003010043", "SPL5010", 2)]
    [InlineData(512, "010003010001", "SPL5003", 2)]
    [InlineData(512, "0000F3", "SPL5004")]
    [InlineData(512, "0000830000F3", "SPL5004")]
    [InlineData(512, "0100030000F31A0000", "SPL5005", 2)]
    public void DamagedTapesGiveDiagnostics(int header, string records, string code, int record = 0)
    {
        byte[] bytes = [.. new byte[header], .. Convert.FromHexString(records)];
        var diagnostic = TapeReader.Read("damaged.dst", bytes).Diagnostics[0];
        Assert.Equal(code, diagnostic.Code);
        Assert.Equal(record == 0 ? "damaged.dst" : $"damaged.dst(1,{record})", diagnostic.Place.ToString());
    }

    /// <summary>A tape of 10 mm, and of 12 with the move to where it begins.</summary>
    [Theory]
    [InlineData(50, 50, "")]
    [InlineData(100, 0, "")]
    [InlineData(120, 0, "")]
    [InlineData(0, 0, "")]
    [InlineData(20, 0, "SPL5011")]
    [InlineData(400, 0, "SPL5011")]
    public void AHeaderWithAnotherSizeIsTold(int right, int left, string code)
    {
        var tape = TapeWriter.Write(
            new(
                "size",
                [new(TapeCommand.Jump, 20, 0), new(TapeCommand.Stitch, 0, 50), new(TapeCommand.Stitch, 100, -50)]
            )
        );
        var header = Encoding.ASCII.GetString(tape, 0, 512);
        var changed = header
            .Replace("+X:00120", FormattableString.Invariant($"+X:{right, 5}"), StringComparison.Ordinal)
            .Replace("-X:00000", FormattableString.Invariant($"-X:{left, 5}"), StringComparison.Ordinal);
        Encoding.ASCII.GetBytes(changed, tape);
        Assert.Equal(code, string.Concat(TapeReader.Read("size.dst", tape).Diagnostics.Select(d => d.Code)));
    }

    /// <summary>A byte 1A after the end mark is usual; less than a record holds no stitch.</summary>
    [Theory]
    [InlineData("")]
    [InlineData("1A")]
    [InlineData("1A1A")]
    public void LessThanARecordAfterTheEndIsNoMatter(string rest) =>
        Assert.Empty(
            TapeReader
                .Read("whole.dst", [.. new byte[512], .. Convert.FromHexString("0100030000F3" + rest)])
                .Diagnostics
        );

    /// <summary>A stop that was damaged into an end mark hides what comes behind it, and the header tells.</summary>
    [Theory]
    [InlineData("C3", "")]
    [InlineData("F3", "SPL5002")]
    public void AnEndMarkThatComesTooEarlyIsAnError(string third, string code)
    {
        byte[] bytes =
        [
            .. Encoding.ASCII.GetBytes("LA:bay             \rST:      4\rCO:  1\r".PadRight(512)),
            .. Convert.FromHexString($"0100030000{third}0100030100030000F3"),
        ];
        var read = TapeReader.Read("damaged.dst", bytes);
        Assert.Equal(code == "", read.Succeeded);
        Assert.Equal(code, read.Diagnostics.Select(d => d.Code).SingleOrDefault(""));
    }

    /// <summary>Some programs count the end mark; a header that is wrong by more is told, and the records are sewn.</summary>
    [Theory]
    [InlineData("LA:bay             \rST:      2\rCO:  0\r", "")]
    [InlineData("LA:bay             \rST:0000003\rCO:000\r", "")]
    [InlineData("LA:bay             \rST:0000009\rCO:000\r", "SPL5009")]
    [InlineData("LA:bay             \rST:0000002\rCO:004\r", "SPL5009")]
    [InlineData("LA:bay             \rST:many\rCO:\r", "")]
    [InlineData("something else", "")]
    public void AWrongHeaderIsTold(string header, string code)
    {
        byte[] bytes =
        [
            .. Encoding.ASCII.GetBytes(header.PadRight(512)),
            .. Convert.FromHexString("0100030100030000F3"),
        ];
        var read = TapeReader.Read("header.dst", bytes);
        Assert.Equal(2, read.Value.Records.Length);
        Assert.Equal(code, string.Join(' ', read.Diagnostics.Select(d => d.Code)));
    }

    [Fact]
    public void WhatTheHeaderPromisesAndIsNotThereHasBrokenOff()
    {
        var tape = new Tape("bay", [.. Enumerable.Repeat(new TapeRecord(TapeCommand.Stitch, 5, 0), 9)]);
        var whole = TapeWriter.Write(tape);
        var broken = TapeReader.Read("bay.dst", whole.AsSpan(0, whole.Length - 9)).Diagnostics.Single();
        Assert.Equal(
            "bay.dst(1,7): error SPL5002: the tape breaks off after 7 records of the 9 that its header promises, without an end mark (00 00 F3); copy it again",
            broken.ToString()
        );
    }

    [Fact]
    public void ATapeThatLeavesEveryMachineIsDamaged()
    {
        var far = Enumerable.Repeat(new TapeRecord(TapeCommand.Stitch, 0, -121), 166).ToImmutableArray();
        Assert.Equal(
            "SPL5006",
            TapeReader.Read("far.dst", TapeWriter.Write(new("far", far))).Diagnostics.Single().Code
        );
        Assert.True(TapeReader.Read("near.dst", TapeWriter.Write(new("near", far[1..]))).Succeeded);
    }

    [Fact]
    public void RandomBytesGiveATapeOrDiagnosticsAndNoException() =>
        Gen
            .Byte.Array[0, 1200]
            .Holds(bytes =>
            {
                var read = TapeReader.Read("random.dst", bytes);
                return read.Succeeded || read.Diagnostics.Length == 1;
            });
}
