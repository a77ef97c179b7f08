using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fields.Covering;

namespace Splitter.Tests.Planning.Fields;

/// <summary>Which covers are kept. Each has two fields, of which the first stays; how well it does is told by the test.</summary>
public sealed class ShortlistTests
{
    [Fact]
    public void TheBestComeFirstAndNoMoreThanWereAskedFor() =>
        Assert.Equal([100, 300], Kept(2, (200, 5), (100, 1), (300, 2), (400, 3)));

    /// <summary>Whose fields all lie beside those of another is much the same, and the better of both stays.</summary>
    [Theory]
    [InlineData(2, 1, "101")]
    [InlineData(1, 2, "100")]
    public void OfTwoThatAreMuchTheSameTheBetterStays(double one, double other, string kept) =>
        Assert.Equal(kept, string.Join(' ', Kept(3, (100, one), (101, other))));

    /// <summary>Fewer fields are better than anything.</summary>
    [Fact]
    public void ASmallerCoverDrivesOutAllLargerOnes()
    {
        var list = new Shortlist(cover => cover.Length, 3);
        list.Add(Cover(100));
        list.Add([.. Cover(100).Take(1)]);
        list.Add(Cover(300));
        Assert.Single(Assert.Single(list.Covers));
    }

    /// <summary>Where the second fields of those that are kept lie, mm.</summary>
    private static IEnumerable<int> Kept(int most, params (int At, double Misfit)[] covers)
    {
        var list = new Shortlist(cover => covers.Single(c => c.At == cover[1].Centre.X / 1000).Misfit, most);
        foreach (var cover in covers)
            list.Add(Cover(cover.At));
        return list.Covers.Select(cover => cover[1].Centre.X / 1000);
    }

    private static ImmutableArray<Field> Cover(int at) => [Field(0), Field(at)];

    private static Field Field(int x) => new(Samples.Hoop(100, 100), Point.FromMillimetres(x, 0), Turn.None, 0);
}
