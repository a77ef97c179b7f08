using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Stitching;

namespace Splitter.Tests.Stitching;

/// <summary>What tests ask of sewn blocks.</summary>
internal static class Sewn
{
    /// <summary>On the tape's grid, tied at both ends, and ties aside no stitch shorter or longer than may be.</summary>
    internal static void AssertSewable(Block block)
    {
        Assert.All(block.Stitches, s => Assert.Equal(s.At, s.At.OnTape()));
        foreach (var (a, b) in Pairs(block))
        {
            var length = a.At.DistanceTo(b.At);
            Assert.True(length <= 12_100, $"{b.Use} is {length} long");
            Assert.True(
                length >= 300 || b.Use == StitchUse.Tie || a.Use == StitchUse.Tie,
                $"{b.Use} is {length} short"
            );
        }
        Assert.Equal(StitchUse.Tie, block.Stitches[0].Use);
        Assert.Equal(StitchUse.Tie, block.Stitches[^1].Use);
    }

    internal static IEnumerable<(Stitch A, Stitch B)> Pairs(Block block) => block.Stitches.Zip(block.Stitches.Skip(1));

    /// <summary>
    /// Share of the ground within 0.2 mm of stitches of one use, looked at every 0.07 mm: every 0.1 mm would look along
    /// the tape's own grid and miscount rows that run along its diagonals.
    /// </summary>
    internal static double Covered(Region ground, ImmutableArray<Block> blocks, StitchUse use = StitchUse.Fill)
    {
        const int Step = 70,
            Reach = 200;
        var box = ground.Bounds.Grown(1000);
        var (width, height) = ((box.Width / Step) + 1, (box.Height / Step) + 1);
        var thread = new bool[width, height];
        foreach (var (a, b) in blocks.SelectMany(Pairs).Where(p => p.B.Use == use))
        {
            var near = Box.Around([a.At, b.At]).Grown(Reach);
            double dx = b.At.X - a.At.X,
                dy = b.At.Y - a.At.Y;
            // Stitches may leave the ground that is looked at.
            var (left, right) = (Math.Max(near.Left, box.Left), Math.Min(near.Right, box.Right));
            var (top, bottom) = (Math.Max(near.Top, box.Top), Math.Min(near.Bottom, box.Bottom));
            for (var x = (left - box.Left) / Step; x <= (right - box.Left) / Step; x++)
            for (var y = (top - box.Top) / Step; y <= (bottom - box.Top) / Step; y++)
            {
                double px = box.Left + (x * Step) - a.At.X,
                    py = box.Top + (y * Step) - a.At.Y;
                var share = Math.Clamp(((px * dx) + (py * dy)) / ((dx * dx) + (dy * dy)), 0, 1);
                thread[x, y] |= new Vector(px - (share * dx), py - (share * dy)).Length <= Reach;
            }
        }
        var contains = Polygons.Containment(ground);
        var (inside, covered) = (0, 0);
        for (var x = 0; x < width; x++)
        for (var y = 0; y < height; y++)
            if (contains(box.Left + (x * Step), box.Top + (y * Step)))
            {
                inside++;
                covered += thread[x, y] ? 1 : 0;
            }
        return (double)covered / inside;
    }

    /// <summary>Every place on every stitch, looked at twenty times on its way, lies within the ground.</summary>
    internal static void AssertWithin(Region ground, Block block)
    {
        var contains = Polygons.Containment(ground);
        foreach (var (a, b) in Pairs(block))
            for (var k = 0; k <= 20; k++)
            {
                var p = a.At.Towards(b.At, k / 20.0);
                Assert.True(contains(p.X, p.Y), $"{b.Use} from {a.At} to {b.At} leaves the ground at {p}");
            }
    }
}
