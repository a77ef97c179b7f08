using CsCheck;
using Splitter.Geometry;

namespace Splitter.Tests.Geometry;

/// <summary>What lies over what, however many layers there are.</summary>
public sealed class CellLayersTests
{
    /// <summary>A thousand layers on one place: each lies on the one before, and the rest follows from that.</summary>
    [Fact]
    public void OfManyLayersTheUppermostCounts()
    {
        var layers = new CellLayers();
        var ground = Square(0, 0, 4000);
        for (var owner = 0; owner < 1000; owner++)
        {
            HashSet<int> below = [.. layers.Below(ground)];
            Assert.Equal(owner == 0 ? [] : [owner - 1], below);
            layers.Lay(owner, ground, below);
        }
    }

    /// <summary>What lies at the edge of something that does not know of it is still below.</summary>
    [Fact]
    public void WhatNothingIsKnownToLieOverStays()
    {
        var layers = new CellLayers();
        layers.Lay(1, Square(0, 0, 4000), new HashSet<int>());
        layers.Lay(2, Square(2000, 0, 4000), new HashSet<int>());
        Assert.Equal([1, 2], layers.Below(Square(3000, 0, 500)).Distinct().Order());
    }

    /// <summary>Squares at random: what follows from what is kept is each that lies below.</summary>
    [Fact]
    public void EachLayerBelowFollows() =>
        Gen.Select(Gen.Int[0, 20], Gen.Int[0, 20], Gen.Int[1, 8], (x, y, side) => (x, y, side))
            .Array[2, 20]
            .Holds(squares =>
            {
                var layers = new CellLayers();
                var grounds = squares.Select(s => Square(s.x * 500, s.y * 500, s.side * 500)).ToArray();
                var under = new List<HashSet<int>>();
                for (var i = 0; i < grounds.Length; i++)
                {
                    HashSet<int> below = [.. layers.Below(grounds[i])];
                    layers.Lay(i, grounds[i], below);
                    under.Add([.. below, .. below.SelectMany(k => under[k])]);
                    var all = Enumerable.Range(0, i).Where(k => grounds[k].Meets(grounds[i])).ToList();
                    Assert.Subset(under[i], all.ToHashSet());
                    Assert.Subset(all.ToHashSet(), below);
                }
            });

    /// <summary>Near other ground there are the same edges as in all of it.</summary>
    [Theory]
    [InlineData(9000, 9000)]
    [InlineData(500, 20_000)]
    [InlineData(-3000, -700)]
    public void WhatLiesWithinEdgesIsFoundNearby(int x, int y)
    {
        var (fill, section) = (Square(0, 0, 40_000), Square(x, y, 3000));
        var near = fill.Near(section);
        Assert.InRange(near.Count, 0, fill.Count / 10);
        Assert.Equal(section.Shared(fill.Inner(1500)), section.Shared(near.Inner(1500)));
    }

    private static CellGround Square(int x, int y, int side)
    {
        var ground = new CellGround();
        for (var row = y; row <= y + side; row += CellGround.Side)
            ground.Lay(new(x, row), new(x + side, row), 0);
        return ground;
    }
}
