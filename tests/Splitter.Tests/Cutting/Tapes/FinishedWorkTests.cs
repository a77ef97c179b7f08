using Splitter.Parts;
using Splitter.Stitching;
using Splitter.Tests.Artwork.Tapes;

namespace Splitter.Tests.Cutting.Tapes;

/// <summary>What an earlier part has finished is not covered by a later one, and seams are no rows of knots.</summary>
public sealed class FinishedWorkTests
{
    /// <summary>Lines upon a fill, so close that an overlap would lie over one: it ends before it.</summary>
    [Fact]
    public void AnOverlapEndsBeforeALineThatIsSewnAlready()
    {
        var tape = new HandTape().Rows(0, 0, 100, 40).Stop();
        for (var x = 30.0; x <= 70; x += 0.5)
            tape.Jump(x, 2, 10).Run(x, 38);
        var set = Made(tape, blocks: 2);
        Assert.Equal(2, set.Parts.Length);
        var (earlier, later) = (Stitches(set.Parts[0]), Stitches(set.Parts[1]));
        var lines = Lines(earlier).Except(Lines(later)).ToList();
        var rows = later.Where(s => s is { From.Use: StitchUse.Fill, To.Use: StitchUse.Fill });
        Assert.NotEmpty(rows);
        Assert.NotEmpty(lines);
        foreach (var (from, to) in rows.Where(r => r.To.At.Y is > 2000 and < 38_000))
            Assert.DoesNotContain(
                lines,
                x => x > Math.Min(from.At.X, to.At.X) && x < Math.Max(from.At.X, to.At.X) && to.At.Y == from.At.Y
            );

        static IEnumerable<int> Lines(List<(Stitch From, Stitch To)> stitches) =>
            stitches
                .Where(s => s.To.Use == StitchUse.Run && s.From.At.X == s.To.At.X)
                .Select(s => s.To.At.X)
                .Distinct();
    }

    /// <summary>
    /// Rows of long stitches below narrow columns: those that cross the seam reach farther than the overlap.
    /// </summary>
    [Fact]
    public void AStitchAcrossASeamLiesBelowWhatIsFinishedOverIt()
    {
        var tape = new HandTape();
        for (var row = 0; row <= 100; row++)
        {
            var holes = Enumerable
                .Range(0, 15)
                .Select(k => Math.Clamp((k * 8.0) - (row % 4 * 2), 0, 100))
                .Distinct()
                .ToList();
            foreach (var x in row % 2 == 0 ? holes : Enumerable.Reverse(holes))
                tape.Sew((x, row * 0.4));
        }
        tape.Stop();
        for (var x = 30; x <= 70; x += 3)
            tape.Jump(x, 2, 10).Column(x, 2, 1, 36);
        var set = Made(tape, blocks: 2);
        Assert.Equal(2, set.Parts.Length);
        Assert.Empty(LayersInOrder.Turned(set, "t1", "t2"));
    }

    /// <summary>The line below a column crosses the seam in the part that is sewn first.</summary>
    [Fact]
    public void UnderlayOfALaterPartStaysBelowItsOwnColumn()
    {
        var set = Made(new HandTape().Sew((2.5, 0)).Run(2.5, 90, 2.4).Run(2.5, 0, 2.4).Column(0, 0, 5, 90));
        Assert.Equal(2, set.Parts.Length);
        var later = Stitches(set.Parts[1]).Select(s => s.To).Where(s => s.At.Y is > 5000 and < 85_000).ToList();
        var column = later.Where(s => s.Use == StitchUse.Satin).Select(s => s.At.Y).ToList();
        var below = later.Where(s => s.Use != StitchUse.Satin).Select(s => s.At.Y).ToList();
        Assert.InRange(below.Min(), column.Min(), column.Max());
        Assert.InRange(below.Max(), column.Min(), column.Max());
    }

    /// <summary>Rows that nearly run along the seam end far from each other; the thread goes on beside them.</summary>
    [Theory]
    [InlineData(10)]
    [InlineData(15)]
    [InlineData(20)]
    public void RowsThatNearlyRunAlongASeamAreSewnInOneGo(int degrees)
    {
        var set = Made(Slanting(60, 100, degrees));
        Assert.Equal(2, set.Parts.Length);
        foreach (var part in set.Parts)
            Assert.Equal(0, part.Steps.Where(s => s.Kind == StepKind.Body).Sum(s => s.Moves.Count(m => m.Trim)));
    }

    /// <summary>A fill of slanting rows, to and fro.</summary>
    private static HandTape Slanting(double width, double height, int degrees)
    {
        var (tan, cos) = (Math.Tan(degrees * Math.PI / 180), Math.Cos(degrees * Math.PI / 180));
        var tape = new HandTape();
        var right = true;
        for (var at = 0.6; at < height + (width * tan) - 0.6; at += 0.4 / cos, right = !right)
        {
            var (left, end) = (Math.Max(0, (at - height) / tan), Math.Min(width, at / tan));
            var count = Math.Max(1, (int)((end - left) / cos / 4));
            for (var i = 0; i <= count; i++)
            {
                var x = left + ((end - left) * (right ? i : count - i) / count);
                tape.Sew((x, at - (x * tan)));
            }
        }
        return tape;
    }

    private static List<(Stitch From, Stitch To)> Stitches(Part part) =>
        [
            .. from step in part.Steps
            where step.Kind == StepKind.Body
            from move in step.Moves
            from stitch in move.Block.Stitches.Zip(move.Block.Stitches.Skip(1))
            select stitch,
        ];

    private static PartSet Made(HandTape tape, int blocks = 1)
    {
        var made = HandTape.Make(tape.Bytes, blocks, 70, 70);
        Assert.True(made.Succeeded, string.Join('\n', made.Diagnostics));
        NothingLost.Check(tape.Bytes, made.Value.Sets.Single());
        return made.Value.Sets.Single();
    }
}
