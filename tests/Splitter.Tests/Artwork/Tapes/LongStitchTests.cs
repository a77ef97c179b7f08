using Splitter.Artwork;
using Splitter.Artwork.Tapes;
using Splitter.Cutting.Tapes;
using Splitter.Parts;
using Splitter.Stitching;
using Splitter.Tapes;

namespace Splitter.Tests.Artwork.Tapes;

/// <summary>Stitches that are longer than a record holds: jumps, and then a stitch.</summary>
public sealed class LongStitchTests
{
    /// <summary>Wide stitches to the right, each with jumps before it, and back with them or in several stitches.</summary>
    private static HandTape Wide(double width, double height, int jumps, int back = 1)
    {
        var tape = new HandTape().Sew((0, 0));
        for (var y = 0.0; y < height; y += 0.5)
        {
            for (var i = 1; i <= jumps; i++)
                tape.Jumps((width * i / (jumps + 1), y));
            tape.Sew((width, y + 0.25));
            for (var i = back == 1 ? jumps : 0; i > 0; i--)
                tape.Jumps((width * i / (jumps + 1), y + 0.5));
            for (var i = back - 1; i >= 0; i--)
                tape.Sew((width * i / back, y + 0.5));
        }
        return tape;
    }

    [Theory]
    [InlineData(14, 1, 1)]
    [InlineData(14, 1, 2)]
    [InlineData(22, 2, 1)]
    public void AWideColumnIsOneColumn(double width, int jumps, int back)
    {
        var satin = Assert.IsType<SatinShape>(Assert.Single(Shapes(Wide(width, 40, jumps, back))));
        Assert.InRange(satin.Style.RowSpacing, 450, 550);
        var stitches = Assert.Single(satin.Original).Stitches;
        Assert.Equal(1 + (80 * (back + 1)), stitches.Length);
        Assert.All(Assert.Single(satin.Columns).Rungs, r => Assert.InRange(r.Width, width * 990, width * 1010));
    }

    /// <summary>Three jumps cut the thread on most machines, and a move to another place is none of a column.</summary>
    [Fact]
    public void OtherMovesStayMoves()
    {
        Assert.DoesNotContain(Shapes(Wide(22, 40, 3, back: 2)), s => s is SatinShape);
        var dots = new HandTape();
        for (var i = 0; i < 8; i++)
            dots.Jump(i * 14, 0, i == 0 ? 0 : 2).Sew(((i * 14) + 2, 0), ((i * 14) + 2, 2), (i * 14, 2), (i * 14, 0));
        Assert.All(Shapes(dots).SelectMany(s => s.Original).Skip(1), t => Assert.Equal(ThreadArrival.Loose, t.Start));
        Assert.Equal(8, Shapes(dots).SelectMany(s => s.Original).Count());
    }

    /// <summary>Each stitch is one stitch of some part, however it is cut, and what is whole is the very records.</summary>
    [Fact]
    public void WideStitchesAreSewnAsTheyCame()
    {
        var tape = Wide(14, 40, 1);
        var part = Made(tape).Parts.Single();
        var read = TapeReader.Read("part", Made(tape).Files.Single(f => f.Path.EndsWith(".dst", Ordinal)).Bytes.Span);
        Assert.Equal(tape.Tape.Records.Count(r => r.Command == TapeCommand.Jump), Wides(read.Value));
        Assert.All(Bodies(part).SelectMany(b => b.Stitches), s => Assert.Equal(StitchSource.Original, s.Source));
        Assert.Equal(161, Bodies(part).Single().Stitches.Length);
    }

    [Fact]
    public void AWideColumnThatIsCutOverlapsAsAnyOther()
    {
        var set = Made(Wide(14, 100, 1));
        var join = Assert.Single(set.Plan.Joins);
        Assert.Equal(1, set.Plan.Seams.CutShapes);
        Assert.All(
            set.Parts,
            part =>
            {
                var stitches = Assert.Single(Bodies(part)).Stitches;
                Assert.DoesNotContain(stitches, s => s.Source == StitchSource.Divided);
                var past = stitches.Where(s => s.Source == StitchSource.Repeated).Select(s => s.At.Y).ToList();
                Assert.InRange(past.Max() - past.Min(), join.Overlap * 0.3, join.Overlap * 1.1);
            }
        );
        Assert.Equal(
            401,
            set.Parts.SelectMany(Bodies).SelectMany(b => b.Stitches).Count(s => s.Source == StitchSource.Original)
        );
    }

    private const StringComparison Ordinal = StringComparison.Ordinal;

    /// <summary>Moves of more than one record that end with a stitch of some length.</summary>
    private static int Wides(Tape tape) =>
        tape
            .Records.Zip(tape.Records.Skip(1))
            .Count(r =>
                r.First.Command == TapeCommand.Jump
                && r.Second.Command == TapeCommand.Stitch
                && Math.Abs(r.Second.U) > 50
            );

    private static List<Shape> Shapes(HandTape tape)
    {
        var sheet = TapeSheet.Of(tape.Tape);
        return [.. new TapeShapes("hand.dst", [.. sheet.Blocks.Select(_ => 0)]).Of(sheet)];
    }

    private static PartSet Made(HandTape tape)
    {
        var made = HandTape.Make(tape.Bytes, 1, 70, 70);
        Assert.True(made.Succeeded, string.Join('\n', made.Diagnostics));
        return made.Value.Sets.Single();
    }

    private static IEnumerable<Block> Bodies(Part part) =>
        part.Steps.Where(s => s.Kind == StepKind.Body).SelectMany(s => s.Moves).Select(m => m.Block);
}
