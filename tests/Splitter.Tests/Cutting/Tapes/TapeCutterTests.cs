using System.Collections.Immutable;
using Splitter.Cutting.Tapes;
using Splitter.Outputs.Tapes;
using Splitter.Parts;
using Splitter.Stitching;
using Splitter.Tapes;
using Splitter.Tests.Artwork.Tapes;

namespace Splitter.Tests.Cutting.Tapes;

/// <summary>How what is on a tape already comes apart at a seam.</summary>
public sealed class TapeCutterTests
{
    private static PartSet Made(HandTape tape, int blocks = 1)
    {
        var made = HandTape.Make(tape.Bytes, blocks, 70, 70);
        Assert.True(made.Succeeded, string.Join('\n', made.Diagnostics));
        return made.Value.Sets.Single();
    }

    private static IEnumerable<Block> Bodies(Part part) =>
        part.Steps.Where(s => s.Kind == StepKind.Body).SelectMany(s => s.Moves).Select(m => m.Block);

    /// <summary>Ties that are ours: the tape has none.</summary>
    private static int Ties(IEnumerable<Stitch> stitches) =>
        stitches.Count(s => s is { Use: StitchUse.Tie, Source: StitchSource.Made });

    [Fact]
    public void AColumnThatIsCutIsTiedAndOverlapsOnBothSides()
    {
        var set = Made(new HandTape().Column(0, 0, 5, 100));
        var join = Assert.Single(set.Plan.Joins);
        var blocks = set.Parts.Select(p => Assert.Single(Bodies(p)).Stitches).ToList();
        Assert.Equal(2, blocks.Count);
        foreach (var stitches in blocks)
        {
            // Two of the three holes at a seam's end are new, the last is the column's own.
            Assert.InRange(Ties(stitches), 3, 3);
            var own = Ys(stitches, StitchSource.Original);
            var past = Ys(stitches, StitchSource.Repeated);
            // Interleaved ends reach over the seam by half of the overlap at least, and that is what columns do.
            var reached = Math.Max(past.Max() - own.Max(), own.Min() - past.Min());
            Assert.InRange(reached, join.Overlap * 0.3, join.Overlap * 1.1);
        }
        // Both ends of the tape are as they were.
        Assert.Equal(StitchSource.Original, blocks.SelectMany(b => b).MinBy(s => s.At.Y).Source);
        Assert.Equal(StitchSource.Original, blocks.SelectMany(b => b).MaxBy(s => s.At.Y).Source);
    }

    [Fact]
    public void ALineThatIsCutIsTiedAndOverlapsOnBothSides()
    {
        var set = Made(new HandTape().Sew((0, 0)).Run(100, 0));
        var join = Assert.Single(set.Plan.Joins);
        var both = set
            .Parts.Select(p => Assert.Single(Bodies(p)).Stitches.Where(s => s.Source != StitchSource.Made).ToList())
            .ToList();
        Assert.All(set.Parts, p => Assert.Equal(3, Ties(Assert.Single(Bodies(p)).Stitches)));
        var (left, right) = (both.MinBy(b => b.Min(s => s.At.X))!, both.MaxBy(b => b.Max(s => s.At.X))!);
        Assert.InRange(left.Max(s => s.At.X) - right.Min(s => s.At.X), join.Overlap, (2 * join.Overlap) + 2500);
    }

    /// <summary>Rows of each part are one thread, and their ends reach past the seam by turns.</summary>
    [Fact]
    public void RowsOfAFillThatIsCutGoOnAtTheSeamWithEndsThatInterleave()
    {
        var set = Made(new HandTape().Rows(0, 0, 100, 40));
        var join = Assert.Single(set.Plan.Joins);
        Assert.Equal(2, set.Parts.Length);
        foreach (var part in set.Parts)
        {
            var stitches = Assert.Single(Bodies(part)).Stitches;
            // Ways from row to row along the seam are ours: no other part sews them.
            Assert.Equal(
                stitches.Where(s => s.Use == StitchUse.Travel),
                stitches.Where(s => s is { Source: StitchSource.Made, Use: not StitchUse.Tie })
            );
            var isLeft = stitches.Min(s => s.At.X) == 0;
            var ends = stitches
                .Where(s => s.Use is StitchUse.Fill or StitchUse.Travel)
                .GroupBy(s => s.At.Y)
                .OrderBy(row => row.Key)
                .Select(row => (double)(isLeft ? row.Max(s => s.At.X) : row.Min(s => s.At.X)))
                .ToList();
            Assert.Equal(101, ends.Count);
            var steps = ends.Zip(ends.Skip(1), (a, b) => Math.Abs(a - b)).ToList();
            // Neighbours' ends differ as the two reaches of an overlap do, or by a hole that was there already.
            Assert.True(steps.Average() > 0.2 * join.Overlap, $"{steps.Average()} of {join.Overlap}");
        }
    }

    /// <summary>
    /// Sections with something else sewn between them, each small enough for a part: their edge is cut ground, too.
    /// </summary>
    [Fact]
    public void SectionsOfOneFillOverlapWherePartsMeet()
    {
        var tape = new HandTape()
            .Rows(0, 0, 60, 50)
            .Jump(20, 20, 4)
            .Column(20, 20, 4, 20)
            .Jump(0, 50.4, 8)
            .Rows(0, 50.4, 60, 50);
        var set = Made(tape);
        NothingLost.Check(tape.Bytes, set);
        Assert.Equal(2, set.Parts.Length);
        var join = Assert.Single(set.Plan.Joins);
        var rows = set
            .Parts.Select(p => Bodies(p).SelectMany(b => b.Stitches).Where(s => s.Use == StitchUse.Fill).ToList())
            .ToList();
        var (upper, lower) = (rows.MinBy(r => r.Min(s => s.At.Y))!, rows.MaxBy(r => r.Max(s => s.At.Y))!);
        Assert.InRange(upper.Max(s => s.At.Y) - lower.Min(s => s.At.Y), join.Overlap / 2, 3 * join.Overlap);
        Assert.All(rows, r => Assert.Contains(r, s => s.Source == StitchSource.Repeated));
        // Each sews the column, of which it may have some, after the rows below and before those that came later.
        foreach (var part in set.Parts)
        {
            var sewn = Bodies(part).SelectMany(b => b.Stitches).Where(s => s.Source == StitchSource.Original).ToList();
            var column = sewn.Select((s, i) => (s, i)).Where(s => s.s.Use == StitchUse.Satin).ToList();
            Assert.All(column, c => Assert.All(sewn.Take(c.i), s => Assert.InRange(s.At.Y, 0, 50_000)));
            Assert.All(column, c => Assert.All(sewn.Skip(c.i), s => Assert.True(Satin(s) || s.At.Y >= 50_400)));
        }

        static bool Satin(Stitch stitch) => stitch.Use == StitchUse.Satin;
    }

    /// <summary>
    /// Two lines, once what lay between them is left out: we tie both, and a fill hides the way from one to the other.
    /// </summary>
    [Theory]
    [InlineData(-10, true)]
    [InlineData(14, false)] // The fill begins below it.
    public void WhereLaterRowsHideTheWayBetweenEndsOfOursTheThreadGoesOn(double top, bool goesOn)
    {
        var tape = new HandTape()
            .Sew((0, 0))
            .Run(25, 0)
            .Jump(25, 0, 1)
            .Column(25, 0, 4, 10)
            .Jump(25, 10, 1)
            .Run(54, 10)
            .Jump(15, top, 12)
            .Rows(15, top, 25, 30);
        var made = HandTape.Make(tape.Bytes, 1, 70, 70, artwork: ", sew: [{ match: { class: satin }, as: leave }]");
        var part = made.Value.Sets.Single().Parts.Single();
        var lines = part.Steps.SelectMany(s => s.Moves).Where(m => m.Block.Of.Contains("run")).ToList();
        Assert.Equal([false, !goesOn], lines.Select(m => m.Trim));
        var ways = lines[0].Block.Stitches.Where(s => s.Use == StitchUse.Travel).ToList();
        Assert.Equal(goesOn, ways.Count > 0);
        Assert.All(ways, s => Assert.Equal(StitchSource.Made, s.Source));
    }

    /// <summary>Rows that follow half a circle: each part sews its stretch of every row in one go.</summary>
    [Fact]
    public void CurvedRowsAreCutRowByRow()
    {
        var tape = new HandTape().Arcs(30, 40, 180);
        var set = Made(tape);
        NothingLost.Check(tape.Bytes, set);
        Assert.Equal(2, set.Parts.Length);
        foreach (var part in set.Parts)
        {
            var rows = Assert
                .Single(Bodies(part))
                .Stitches.Where(s => s is { Use: StitchUse.Fill, Source: StitchSource.Original })
                // From the middle of the arcs, which the outermost row puts 40 mm from the edges.
                .CountBy(s => (int)Math.Round((s.At.DistanceTo(new(40_000, 40_000)) - 30_000) / 400));
            Assert.Equal(26, rows.Count());
            Assert.All(rows, row => Assert.InRange(row.Value, 10, 30));
        }
    }

    /// <summary>Open rows below others: no part sews what the other one does.</summary>
    [Fact]
    public void UnderlayEndsAtTheSeam()
    {
        var tape = new HandTape().Rows(0, 0, 100, 40, 2).Run(0, 40).Run(0, 0).Rows(0, 0, 100, 40);
        var set = Made(tape);
        NothingLost.Check(tape.Bytes, set);
        Assert.Equal(2, set.Parts.Length);
        var below = set.Parts.SelectMany(Bodies).SelectMany(b => b.Stitches).Where(s => s.Use == StitchUse.Underlay);
        Assert.DoesNotContain(StitchSource.Repeated, below.Skip(1).Select(s => s.Source));
    }

    [Fact]
    public void SeamsGoBetweenObjectsWhereTheyCan()
    {
        var tape = new HandTape();
        for (var i = 0; i < 4; i++)
        for (var k = 0; k < 4; k++)
            if ((i, k) == (0, 0))
                tape.Column(0, 0, 4, 12);
            else
                tape.Jump(i * 27, k * 27, 12).Column(i * 27, k * 27, 4, 12);
        var set = Made(tape);
        Assert.True(set.Parts.Length >= 4);
        Assert.Equal(0, set.Plan.Seams.CutShapes);
        Assert.DoesNotContain(
            set.Parts.SelectMany(Bodies).SelectMany(b => b.Stitches),
            s => s.Source != StitchSource.Original
        );
    }

    /// <summary>What lies over something is sewn after it in each part, and in no earlier part.</summary>
    [Fact]
    public void LayersKeepTheirOrder()
    {
        var tape = new HandTape().Rows(0, 0, 120, 40).Stop().Jump(50, 10, 12).Rows(50, 10, 30, 20);
        var set = Made(tape, blocks: 2);
        Assert.Empty(set.Plan.TurnedLayers);
        Assert.Empty(LayersInOrder.Turned(set, "t1", "t2"));
        Assert.All(
            set.Parts,
            p =>
                Assert.Equal(
                    p.Steps.Where(s => s.Kind == StepKind.Body)
                        .Select(s => s.Thread!.Name)
                        .Order(StringComparer.Ordinal),
                    p.Steps.Where(s => s.Kind == StepKind.Body).Select(s => s.Thread!.Name)
                )
        );
    }

    /// <summary>A stop between two blocks of one thread is there for something, and stays.</summary>
    [Fact]
    public void AStopWithoutAChangeOfThreadStays()
    {
        var tape = new HandTape().Rows(0, 0, 20, 20).Stop().Jump(30, 0, 4).Rows(30, 0, 20, 20);
        var made = HandTape.Make(tape.Bytes, 1, 70, 70, artwork: ", blocks: [t1, t1]");
        var step = made.Value.Sets.Single().Parts.Single().Steps.First(s => s.Kind == StepKind.Body);
        Assert.Contains("The design stops here with the same thread", step.Stop, StringComparison.Ordinal);
    }

    /// <summary>Trims and loose moves of the tape are there again; one part sews the very records.</summary>
    [Fact]
    public void ATapeThatFitsIsSewnAsItCame()
    {
        var tape = new HandTape().Rows(0, 0, 10, 10).Jump(12, 10, 1).Column(12, 10, 3, 10).Jump(30, 30, 4).Run(40, 40);
        var part = Made(tape).Parts.Single();
        Assert.Equal(
            [null, false, true],
            part.Steps.Where(s => s.Kind == StepKind.Body).SelectMany(s => s.Moves).Select(m => m.Block.IsCutBefore)
        );
        Assert.Equal(0, Ties(Bodies(part).SelectMany(b => b.Stitches)));
    }

    /// <summary>Two jumps and a stitch: one jump more would cut the thread, which is not tied.</summary>
    [Fact]
    public void LongMovesThatLeaveTheThreadUncutDoSo()
    {
        var part = Made(Loose).Parts.Single();
        Assert.Equal(0, Ties(Bodies(part).SelectMany(b => b.Stitches)));
        Assert.Equal(0, TapeCounts.Of(PartTape.Of(part, "loose")).Trims);
    }

    /// <summary>Made wider, the same move takes three jumps: it is cut, and tied before and after.</summary>
    [Fact]
    public void AMoveThatGetsTooLongToLeaveTheThreadUncutIsTied()
    {
        var made = HandTape.Make(Loose.Bytes, 1, 80, 80, artwork: ", width: 66 mm");
        var part = made.Value.Sets.Single().Parts.Single();
        Assert.Equal(6, Ties(Bodies(part).SelectMany(b => b.Stitches)));
        Assert.Equal(1, TapeCounts.Of(PartTape.Of(part, "loose")).Trims);
    }

    private static HandTape Loose =>
        new HandTape().Sew((0, 0)).Run(12, 0).Jumps((24.1, 0), (36.2, 0)).Sew((48.3, 0)).Run(60, 0);

    /// <summary>
    /// What lies between is sewn in another part: there is nothing to stop for, unless the design itself stops there.
    /// </summary>
    [Theory]
    [InlineData("t1, t2, t1", 1)]
    [InlineData("t1, t2, t2", 2)]
    [InlineData("t1, t1, t1", 2)]
    [InlineData("t2, t1, t2", 1)]
    public void AThreadThatComesAgainIsSewnInOneGoWhereNothingLiesBetween(string blocks, int steps)
    {
        var tape = new HandTape()
            .Rows(0, 0, 20, 20)
            .Stop()
            .Jump(90, 0, 12)
            .Rows(90, 0, 20, 20)
            .Stop()
            .Jump(20, 20, 12)
            .Rows(20, 20, 20, 20);
        var made = HandTape.Make(tape.Bytes, 2, 70, 70, artwork: $", blocks: [{blocks}]");
        var part = made.Value.Sets.Single().Parts.Single(p => Bodies(p).Any(b => b.Start.X == 0));
        var body = part.Steps.Where(s => s.Kind == StepKind.Body).ToList();
        Assert.Equal(steps, body.Count);
        Assert.Equal(
            blocks == "t1, t1, t1",
            body[0].Stop?.Contains("The design stops here with the same thread", StringComparison.Ordinal) ?? false
        );
    }

    private static ImmutableArray<int> Ys(ImmutableArray<Stitch> stitches, StitchSource source) =>
        [.. stitches.Where(s => s.Source == source).Select(s => s.At.Y)];
}
