using System.Collections.Immutable;
using CsCheck;
using Splitter.Artwork;
using Splitter.Artwork.Columns;
using Splitter.Cutting;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Parts;
using Splitter.Recipes;
using Splitter.Stitching;
using Splitter.Stitching.Density;
using Splitter.Tests.Stitching;

namespace Splitter.Tests.Parts;

/// <summary>A ring of satin begins where there is room, and is the same ring.</summary>
public sealed class RoomyRingsTests
{
    private const int Most = 3;

    /// <summary>Of the ring's middle line, µm.</summary>
    private const int Radius = 6000;

    [Fact]
    public void ARingThatIsTooMuchWhereItBeginsBeginsElsewhere()
    {
        var ring = Ring();
        var start = ring.Blocks[0].Start;
        var (begun, before, after) = Begun(ring, [Quarter.At(start).Squares[0]]);
        Assert.True(before > 0);
        Assert.True(after < before);
        Assert.True(begun.Blocks[0].Start.DistanceTo(start) > 1000);
        Assert.True(begun.Blocks[0].End.DistanceTo(start) > 1000);
    }

    [Fact]
    public void ARingThatHasRoomStaysAsItIs()
    {
        var ring = Ring();
        Assert.Same(ring, Begun(ring, []).Ring);
    }

    [Fact]
    public void WhereverClothIsFullARingIsOneTiedBlockAndCrowdsNoMore() =>
        Gen.Select(Gen.Int[-8, 7], Gen.Int[-8, 7])
            .Array[1, 40]
            .Holds(
                full =>
                {
                    var ring = Ring();
                    var (begun, before, after) = Begun(
                        ring,
                        [.. full.Distinct().Select(s => new Square(2 * s.Item1, 2 * s.Item2))]
                    );
                    Assert.True(after <= before);
                    var block = Assert.Single(begun.Blocks);
                    Assert.True(Ties.IsTiedAtStart(block) && Ties.IsTiedAtEnd(block));
                    Assert.InRange(Covered(begun), Covered(ring) - 0.005, 1);
                },
                cases: 20
            );

    private static double Covered(SewnPiece ring) =>
        Sewn.Covered(ring.Piece.Shape.Footprint, ring.Blocks, StitchUse.Satin);

    /// <param name="full">Squares that have almost as many layers as they bear.</param>
    private static (SewnPiece Ring, double Before, double After) Begun(SewnPiece ring, ImmutableArray<Square> full)
    {
        var grid = new ThreadGrid(new(-10_000, -10_000, 10_000, 10_000));
        foreach (var square in full)
            while (grid.LayersOn(square) < Most - 1.3)
                grid.Lay(new(square.Middle.X - 250, square.Middle.Y), new(square.Middle.X + 250, square.Middle.Y), 400);
        Lay(grid, ring);
        var before = TooMany(grid);
        var begun = Assert.Single(new RoomyRings(grid, Most).Begun([ring]));
        return (begun, before, TooMany(grid));
    }

    private static double TooMany(ThreadGrid grid) => grid.Squares.Sum(s => Math.Max(0, grid.LayersOn(s) - Most));

    private static void Lay(ThreadGrid grid, SewnPiece sewn)
    {
        foreach (var (_, from, to, breadth) in ClothLayers.Threads([sewn]))
            grid.Lay(from, to.At, breadth);
    }

    private static SewnPiece Ring()
    {
        ImmutableArray<Point> round =
        [
            .. Enumerable
                .Range(0, 73)
                .Select(i =>
                    new Vector(
                        Radius * Math.Cos(2 * Math.PI * (i % 72) / 72),
                        Radius * Math.Sin(2 * Math.PI * (i % 72) / 72)
                    ).From(default)
                ),
        ];
        var path = new Polyline(round);
        var columns = StrokeColumns.From(path, 3000, Cap.Butt, Join.Round, 4);
        var piece = new SatinPiece
        {
            Shape = new SatinShape
            {
                Id = "ring",
                Place = new Place("test.svg", 1, 1),
                Thread = 0,
                Style = new()
                {
                    RowSpacing = 400,
                    StitchLength = 4000,
                    Pull = 200,
                    Underlay = [UnderlayKind.Centre],
                },
                Columns = columns,
                Footprint = Polygons.Stroke(path, 3000, Cap.Butt, Join.Round),
            },
            Hooping = 0,
            Columns = columns,
        };
        return new(piece, SatinStitcher.Stitch(piece));
    }
}
