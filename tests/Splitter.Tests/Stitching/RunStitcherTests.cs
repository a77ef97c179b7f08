using CsCheck;
using Splitter.Cutting;
using Splitter.Geometry;
using Splitter.Stitching;
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
    public void LinesThatGoOnAreOneBlockAndTheNearestIsNext()
    {
        var blocks = RunStitcher.Stitch(
            Piece(2500, Line(0, 0, 10, 0), Line(30, 0, 40, 0), Line(20, 10, 10, 0), Line(21, 12, 30, 30))
        );
        // The third line goes on from the first, backwards; the fourth begins nearest to its end.
        Assert.Equal(3, blocks.Length);
        Assert.Contains(Point.FromMillimetres(20, 10), blocks[0].Stitches.Select(s => s.At));
        Assert.Contains(Point.FromMillimetres(21, 12), blocks[1].Stitches.Take(5).Select(s => s.At));
        Assert.Contains(Point.FromMillimetres(30, 0), blocks[2].Stitches.Take(5).Select(s => s.At));
    }

    [Fact]
    public void AClosedLineBeginsWhereTheNeedleIsNearest()
    {
        var blocks = RunStitcher.Stitch(Piece(2500, Line(0, 0, 10, 0), Line(40, 0, 40, 10, 12, 0, 40, 0)));
        Assert.Equal(Point.FromMillimetres(12, 0), blocks[1].Stitches[3].At);
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
