using CsCheck;
using Splitter.Geometry;
using Splitter.Parts;
using Splitter.Stitching;

namespace Splitter.Tests.Parts;

public sealed class WaitingTests
{
    private static readonly Gen<Stay> Stays =
        from piece in Gen.Int[0, 5]
        from points in Gen.Select(Gen.Int[0, 12], Gen.Int[0, 12], (x, y) => new Point(x * 700, y * 700)).Array[2, 4]
        where points.Zip(points.Skip(1)).All(s => s.First != s.Second)
        from isLoop in Gen.Bool
        select new Stay(RunStitcher.Sewn("a", isLoop ? [.. points, .. points.Reverse().Skip(1)] : [.. points])!, piece);

    /// <summary>Of all that lie over nothing any more the one with the cheapest jump to any of its places, or the first of these.</summary>
    [Fact]
    public void TheNearestOpenOneIsTaken() =>
        Gen.Select(Stays.Array[1, 40], Gen.Int[1, 4])
            .Holds(
                (stays, every) =>
                {
                    int[][] below =
                    [
                        .. Enumerable
                            .Range(0, 6)
                            .Select(p => Enumerable.Range(0, p).Where(q => (p * 3 + q) % every == 0).ToArray()),
                    ];
                    var waiting = new Waiting(stays, below);
                    var left = Enumerable.Range(0, stays.Length).ToList();
                    Point? needle = null;
                    while (left.Count > 0)
                    {
                        var open = left.Where(i => !left.Exists(k => below[stays[i].Piece].Contains(stays[k].Piece)));
                        var expected = open.MinBy(i =>
                            needle is { } from ? stays[i].Places.Min(p => JumpOrder.Cost(from, p)) : 0
                        );
                        Assert.Equal(expected, waiting.TakeNext(needle));
                        left.Remove(expected);
                        needle = stays[expected].Exit;
                    }
                }
            );

    /// <summary>Each of 5,000 little things once looked at all that were left: 12.5 million looks.</summary>
    [Fact]
    public void OfManyOnlyThoseNearByAreLookedAt()
    {
        const int Side = 70;
        Stay[] stays =
        [
            .. Enumerable
                .Range(0, Side * Side)
                .Select(i => new Point(i % Side * 4000, i / Side * 4000))
                .Select((at, i) => new Stay(RunStitcher.Sewn("a", [at, at with { X = at.X + 3000 }])!, i)),
        ];
        var waiting = new Waiting(stays, [.. stays.Select(_ => Array.Empty<int>())]);
        Point? needle = null;
        for (var i = 0; i < stays.Length; i++)
            needle = stays[waiting.TakeNext(needle)].Exit;
        Assert.InRange(waiting.Looks, stays.Length, 150 * stays.Length);
    }
}
