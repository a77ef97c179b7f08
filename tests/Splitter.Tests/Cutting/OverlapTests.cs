using Splitter.Cutting;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Tests.Cutting;

/// <summary>How far past a seam at x = 50 mm two parts sew: all of the overlap, 0.8 mm, or the short share of it.</summary>
public sealed class OverlapTests
{
    private const int All = HandPlan.Overlap;

    private const int Short = (int)(HandPlan.Overlap * Overlaps.ShortShare);

    [Theory]
    [InlineData(EdgeRule.Interleaved, All, Short, Short)]
    [InlineData(EdgeRule.Plain, All, All, All)]
    internal void TheEarlierPartsEvenRowsReachFarther(EdgeRule edges, int even, int odd, int columns)
    {
        var strip = StripOf(HandPlan.Of([null]), edges, part: 0);
        Assert.Equal((even, odd), (Past(strip.EvenRows), Past(strip.OddRows)));
        Assert.Equal((All, columns), (Past(strip.Full), Past(strip.Columns)));

        static int Past(Region ground) => ground.Bounds.Right - 50_000;
    }

    [Theory]
    [InlineData(EdgeRule.Interleaved, Short, All, Short)]
    [InlineData(EdgeRule.Plain, All, All, All)]
    internal void TheLaterPartsOddRowsReachFarther(EdgeRule edges, int even, int odd, int columns)
    {
        var strip = StripOf(HandPlan.Of([null]), edges, part: 1);
        Assert.Equal((even, odd), (Past(strip.EvenRows), Past(strip.OddRows)));
        Assert.Equal((All, columns), (Past(strip.Full), Past(strip.Columns)));

        static int Past(Region ground) => 50_000 - ground.Bounds.Left;
    }

    [Fact]
    public void AnOverlapEndsWithTheField()
    {
        var strip = StripOf(HandPlan.Of([null], right: 50.3), EdgeRule.Interleaved, part: 0);
        Assert.All(
            [strip.EvenRows, strip.OddRows, strip.Full, strip.Columns],
            ground => Assert.Equal(50_300, ground.Bounds.Right)
        );
    }

    /// <summary>A shape with an owner is sewn by it alone, beyond the seam too, and in one piece.</summary>
    [Fact]
    public void AShapeThatOnePartSewsIsNotCut()
    {
        var bar = Samples.Rectangle("bar", 45, 10, 10, 5);
        var piece = Assert.IsType<FillPiece>(
            Assert.Single(Cutter.Cut(Samples.Drawing(bar), HandPlan.Of([1]), new OverlapRules()))
        );
        Assert.Equal((1, false), (piece.Hooping, piece.IsCut));
        Assert.Equal(bar.Footprint.Area, piece.Core.Area);
    }

    /// <summary>Far from the seam there is nothing to share.</summary>
    [Fact]
    public void AShapeOnOneTerritoryIsAllOfOnePart()
    {
        var bar = Samples.Rectangle("bar", 10, 10, 20, 5);
        var piece = Assert.IsType<FillPiece>(
            Assert.Single(Cutter.Cut(Samples.Drawing(bar), HandPlan.Of([null]), new OverlapRules()))
        );
        Assert.Equal(0, piece.Hooping);
        Assert.All([piece.Core, piece.EvenRows, piece.OddRows], g => Assert.Equal(bar.Footprint.Area, g.Area));
    }

    /// <summary>A bar of 0.6 mm along the seam: neither half is wide enough to take the other.</summary>
    [Fact]
    public void OfTwoSliversNoneTakesTheOther()
    {
        var bar = Samples.Rectangle("bar", 49.7, 5, 0.6, 30);
        var pieces = Cutter.Cut(Samples.Drawing(bar), HandPlan.Of([null]), new OverlapRules()).Cast<FillPiece>();
        Assert.Equal([9e6, 9e6], pieces.Select(p => p.Core.Area));
    }

    /// <summary>A sliver of 0.4 mm beyond the seam goes to the neighbour, all of whose rows reach that far; one of 0.6 mm stays.</summary>
    [Theory]
    [InlineData(0.4, 1)]
    [InlineData(0.6, 2)]
    public void ASliverGoesToTheNeighbour(double width, int pieces)
    {
        var bar = Samples.Rectangle("bar", 20, 5, 30 + width, 30);
        var cores = Cutter
            .Cut(Samples.Drawing(bar), HandPlan.Of([null]), new OverlapRules())
            .Cast<FillPiece>()
            .ToList();
        Assert.Equal(pieces, cores.Count);
        Assert.Equal(bar.Footprint.Area, cores.Sum(p => p.Core.Area));
    }

    /// <summary>No underlay lies where two parts sew rows, which hold the cloth.</summary>
    [Fact]
    public void NoUnderlayLiesInAnOverlap()
    {
        var bar = Samples.Rectangle("bar", 20, 10, 60, 20);
        var pieces = Cutter.Cut(Samples.Drawing(bar), HandPlan.Of([null]), new OverlapRules()).Cast<FillPiece>();
        Region[] bare = [.. pieces.Select(p => p.Bare)];
        Assert.Equal(2, bare.Length);
        Assert.True(Polygons.Intersect(bare[0], bare[1]).IsEmpty);
        // The neighbour's rows lie on 0.8 mm of each core: no underlay there, and all over the rest but in its corners.
        Assert.All(bare, b => Assert.InRange(b.Area / 1e6, (29.2 * 20) - 2, 29.2 * 20));
    }

    /// <summary>In a strip that is as narrow as two runs of underlay are apart there is none.</summary>
    [Theory]
    [InlineData(2.2, false)]
    [InlineData(2.6, true)]
    public void UnderlayWantsGroundThatIsWideEnough(double width, bool has)
    {
        var bar = Samples.Rectangle("bar", 10, 10, 20, width);
        var piece = Cutter.Cut(Samples.Drawing(bar), HandPlan.Of([null]), new OverlapRules()).Cast<FillPiece>();
        Assert.Equal(has, !Assert.Single(piece).Bare.IsEmpty);
    }

    private static Strip StripOf(Plan plan, EdgeRule edges, int part) =>
        Strip.Of(new PartGrounds(plan), edges).Single(s => s.Part == part);
}
