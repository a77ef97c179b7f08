using System.Collections.Immutable;
using CsCheck;
using Splitter.Cutting;
using Splitter.Geometry;
using Splitter.Recipes;
using Splitter.Stitching;
using Splitter.Stitching.Runs;
using Splitter.Tests.Artwork.Columns;

namespace Splitter.Tests.Stitching;

public sealed class RunStitcherTests
{
    [Fact]
    public void AnyLineIsOneBlockOfEvenStitchesThatStayOnIt() =>
        Gen.Select(Gen.OneOf(StrokePaths.AnyCornered, StrokePaths.AnySmooth), Gen.Int[1500, 6000])
            .Holds(
                (line, length) =>
                {
                    var block = Assert.Single(RunStitcher.Stitch(Piece(length, line)));
                    Sewn.AssertSewable(block);
                    // Stitches cut curves by 0.1 mm at most, unless they would be shorter than 0.8 mm; the tape adds 0.07.
                    Sewn.AssertWithin(Polygons.Stroke(line, 2 * 400, Cap.Round, Join.Round), block);
                    Assert.All(
                        Sewn.Pairs(block).Where(p => p.B.Use == StitchUse.Run),
                        p => Assert.InRange(p.A.At.DistanceTo(p.B.At), 0, length + 150)
                    );
                },
                cases: 200
            );

    /// <summary>A half circle of 1 mm between two straights of 95 mm: short stitches in the bend, long ones elsewhere.</summary>
    [Fact]
    public void ATightBendShortensOnlyItsOwnStitches()
    {
        var line = new Polyline([
            Point.FromMillimetres(0, 0),
            .. Enumerable
                .Range(0, 25)
                .Select(i => Point.FromMillimetres(95 + Math.Sin(i * Math.PI / 24), 1 - Math.Cos(i * Math.PI / 24))),
            Point.FromMillimetres(0, 2),
        ]);
        var block = Assert.Single(RunStitcher.Stitch(Piece(2500, line)));
        // 2 x 95 mm at 2.5 mm are 76 stitches, 3.1 mm of bend at 0.9 mm are 4, and some between.
        Assert.InRange(block.Stitches.Count(s => s.Use == StitchUse.Run), 78, 88);
        Sewn.AssertWithin(Polygons.Stroke(line, 2 * 200, Cap.Round, Join.Round), block);
    }

    [Fact]
    public void CornersAreKept()
    {
        var line = Line(0, 0, 10, 0, 10, 7, 3, 7);
        var block = Assert.Single(RunStitcher.Stitch(Piece(2500, line)));
        Assert.All(line.Points, corner => Assert.Contains(corner, block.Stitches.Select(s => s.At)));
        // 10 mm in 4, 7 mm in 3 and 3 stitches.
        Assert.Equal(4 + 3 + 3, block.Stitches.Count(s => s.Use == StitchUse.Run));
    }

    [Fact]
    public void LinesThatGoOnAreOneBlock()
    {
        var blocks = RunStitcher.Stitch(
            Piece(2500, Line(0, 0, 10, 0), Line(30, 0, 40, 0), Line(20, 10, 10, 0.15), Line(21, 12, 30, 30))
        );
        // The third line goes on from the first, backwards, near enough; the fourth begins too far from its end.
        Assert.Equal(3, blocks.Length);
        Assert.Contains(Point.FromMillimetres(20, 10), blocks[0].Stitches.Select(s => s.At));
        Assert.All(blocks, Sewn.AssertSewable);
    }

    /// <summary>A cross bar that ends on two posts.</summary>
    [Fact]
    public void LinesThatEndOnOthersAreSewnInOneGo()
    {
        var block = Assert.Single(
            RunStitcher.Stitch(Piece(2500, Line(0, 0, 0, 30), Line(10, 0, 10, 30), Line(0, 10, 10, 10)))
        );
        Sewn.AssertSewable(block);
        // Posts in 4 + 8 stitches, the bar in 4. Six odd hubs: two stay so, the others are joined by 10 mm of each post.
        Assert.Equal(12 + 12 + 4 + 4 + 4, block.Stitches.Count(s => s.Use == StitchUse.Run));
    }

    [Theory]
    [InlineData(0.15, 1)]
    [InlineData(0.16, 2)]
    public void EndsAreJoinedWithinOneAndAHalfStepsOfTheTape(double gap, int blocks) =>
        Assert.Equal(blocks, RunStitcher.Stitch(Piece(2500, Line(0, 0, 20, 0), Line(7, gap, 7, 9))).Length);

    /// <summary>Two squares with a side in common, drawn twice, as outlines of neighbouring areas are.</summary>
    [Fact]
    public void LinesAlongEachOtherShareTheirHoles()
    {
        var block = Assert.Single(
            RunStitcher.Stitch(
                Piece(2500, Line(0, 0, 10, 0, 10, 11, 0, 11, 0, 0), Line(10, 0, 20, 0, 20, 11, 10, 11, 10, 0))
            )
        );
        // Sides of 10 and 11 mm in 4 and 5 stitches; the common one is there twice.
        Assert.Equal(4 * 4 + 4 * 5, block.Stitches.Count(s => s.Use == StitchUse.Run));
        Assert.Equal(
            4 * 4 + 3 * 5 - 1,
            block.Stitches.Where(s => s.Use == StitchUse.Run).Select(s => s.At).Distinct().Count()
        );
    }

    /// <summary>Out and back along both is one walk, every stitch twice; once along each is two.</summary>
    [Fact]
    public void LinesThatCrossAreOneWalkIfTheyAreSewnOutAndBack()
    {
        Polyline[] cross = [Line(0, 5, 20, 9), Line(10, 0, 8, 20)];
        var twice = Stitches(Passes.Double, cross);
        Assert.All(twice.Values, times => Assert.Equal(2, times));
        Assert.Single(Walks(Passes.Double, cross));
        Assert.Equal(2, Walks(Passes.Single, cross).Length);
        Assert.All(Stitches(Passes.Single, cross).Values, times => Assert.Equal(1, times));
    }

    [Fact]
    public void EveryPassGoesThroughTheSameHoles() =>
        Gen.OneOf(StrokePaths.AnyCornered, StrokePaths.AnySmooth)
            .Holds(
                line =>
                {
                    var once = Stitches(Passes.Single, line);
                    foreach (var passes in new[] { Passes.Double, Passes.Triple })
                    {
                        var more = Stitches(passes, line);
                        Assert.Equal(once.Keys.Order(), more.Keys.Order());
                        Assert.All(more, s => Assert.Equal((int)passes * once[s.Key], s.Value));
                    }
                },
                cases: 100
            );

    /// <summary>How often each stitch is sewn, either way.</summary>
    private static Dictionary<(Point, Point), int> Stitches(Passes passes, params Polyline[] lines) =>
        Walks(passes, lines)
            .SelectMany(walk => walk.Zip(walk.Skip(1)))
            .GroupBy(s => s.First.CompareTo(s.Second) < 0 ? s : (s.Second, s.First))
            .ToDictionary(g => g.Key, g => g.Count());

    private static ImmutableArray<ImmutableArray<Point>> Walks(Passes passes, params Polyline[] lines)
    {
        var piece = Piece(2500, lines);
        return RunWalks.Of(piece.Lines, piece.Shape.Style with { Passes = passes });
    }

    private static RunPiece Piece(int length, params Polyline[] lines) =>
        new()
        {
            Shape = Samples.Run("line", 0, 0, 1, 0) with
            {
                Style = new() { StitchLength = length },
                Lines = [.. lines],
            },
            Hooping = 0,
            Lines = [.. lines],
        };

    private static Polyline Line(params double[] corners) =>
        new([
            .. Enumerable
                .Range(0, corners.Length / 2)
                .Select(i => Point.FromMillimetres(corners[2 * i], corners[(2 * i) + 1])),
        ]);
}
