using System.Collections.Immutable;
using CsCheck;
using Splitter.Geometry;
using Splitter.Parts;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter.Tests.Parts;

/// <summary>Needle holes are left out where the cloth has too many; the thread stays about where it lay.</summary>
public sealed class ReliefTests
{
    /// <summary>More needle holes than any square may keep are made on all of the ground first.</summary>
    private const int Holes = 100;

    private static readonly Box Ground = new(-20_000, -20_000, 20_000, 20_000);

    /// <summary>Stitches that turn left or right of the last one by up to 40 degrees.</summary>
    private static readonly Gen<Block> Paths = Gen.Select(
            Gen.Select(Gen.Double[0.3, 0.9], Gen.Double[-40, 40]).Array[3, 30],
            Gen.OneOf(Gen.Const(StitchUse.Fill), Gen.Const(StitchUse.Travel), Gen.Const(StitchUse.Underlay))
        )
        .Select((steps, use) => new Block("path", Path(steps, use)));

    private static ImmutableArray<Stitch> Path(IEnumerable<(double Length, double Turn)> steps, StitchUse use)
    {
        var (at, angle) = (default(Point), 0.0);
        var path = ImmutableArray.Create(new Stitch(at, use));
        foreach (var (length, turn) in steps)
        {
            angle += turn * Math.PI / 180;
            var way = new Vector(Math.Cos(angle), Math.Sin(angle)) * (length * Units.Millimetre);
            path = path.Add(new(at = way.From(at).OnTape(), use));
        }
        return path;
    }

    /// <summary>The path after it, and whether rows over all the ground hide it.</summary>
    private static ImmutableArray<Point> Relieved(Block path, bool hidden)
    {
        var cloth = new ThreadGrid(Ground);
        for (var x = Ground.Left; x < Ground.Right; x += Units.Millimetre)
        for (var y = Ground.Top; y < Ground.Bottom; y += Units.Millimetre)
        for (var i = 0; i < Holes; i++)
            cloth.Pierce(new(x, y));
        Block[] blocks = hidden ? [path, Cover()] : [path];
        var layers = Thread(blocks);
        Relief.Relieve([(blocks, new HiddenGround(blocks))], cloth, layers);
        var again = Thread(blocks);
        Assert.All(again.Squares, square => Assert.Equal(again.ThreadOn(square), layers.ThreadOn(square)));
        return [.. blocks[0].Stitches.Select(s => s.At)];
    }

    private static ThreadGrid Thread(Block[] blocks)
    {
        var layers = new ThreadGrid(Ground);
        foreach (var block in blocks)
            ClothLayers.Lay(layers, block, 1);
        return layers;
    }

    private static Block Cover() =>
        new(
            "cover",
            [
                .. from y in Enumerable.Range(-50, 101)
                from x in y % 2 == 0 ? new[] { -20_000, 20_000 } : [20_000, -20_000]
                select new Stitch(new(x, y * 400), StitchUse.Fill),
            ]
        );

    /// <summary>However many holes are left out, one after the other.</summary>
    [Theory]
    [InlineData(false, Relief.ShownMove)]
    [InlineData(true, Relief.HiddenMove)]
    public void ThreadMovesNoFurtherInAllThanItMay(bool hidden, double most) =>
        Paths.Holds(path =>
        {
            var left = Relieved(path, hidden);
            foreach (var stitch in path.Stitches)
                Assert.InRange(
                    left.Zip(left.Skip(1), (a, b) => Polygons.Distance(a, b, stitch.At, stitch.At)).Min(),
                    0,
                    most
                );
        });

    /// <summary>A quarter of a circle of 4 mm in stitches of 0.35 mm bows 1.2 mm: one stitch cannot stand for it.</summary>
    [Fact]
    public void AHiddenCurveStaysOne()
    {
        var arc = new Block("arc", Path(Enumerable.Repeat((0.35, 5.0), 18), StitchUse.Travel));
        Assert.InRange(Relieved(arc, hidden: true).Length, 3, 6);
    }

    [Fact]
    public void AStraightRowKeepsItsEndsAndStitchesOfAtMostSixMillimetres()
    {
        var left = Relieved(new("row", Path(Enumerable.Repeat((0.5, 0.0), 24), StitchUse.Fill)), hidden: false);
        Assert.Equal(new Point[] { new(0, 0), new(6000, 0), new(12_000, 0) }, left);
    }

    [Theory]
    [InlineData(StitchUse.Tie)]
    [InlineData(StitchUse.Satin)]
    [InlineData(StitchUse.Run)]
    internal void WhatDrawsTheShapeStays(StitchUse use)
    {
        var path = new Block("path", Path(Enumerable.Repeat((0.5, 0.0), 12), use));
        Assert.Equal(path.Stitches.Select(s => s.At), Relieved(path, hidden: true));
    }
}
