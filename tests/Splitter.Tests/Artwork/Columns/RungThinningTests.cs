using CsCheck;
using Splitter.Artwork;
using Splitter.Artwork.Columns;
using Splitter.Geometry;

namespace Splitter.Tests.Artwork.Columns;

public sealed class RungThinningTests
{
    /// <summary>
    /// A straight ribbon needs its ends alone; of a very long one some more are kept, so that no rung is looked at more than
    /// two thousand times. By hand: 10,000 rungs without the ends are four times 2,001 and a rest.
    /// </summary>
    [Theory]
    [InlineData(2, 2)]
    [InlineData(2_002, 2)]
    [InlineData(2_003, 3)]
    [InlineData(10_000, 6)]
    public void OfAStraightRibbonFewRungsAreKept(int rungs, int kept) =>
        Assert.Equal(
            kept,
            new RungThinning(Enumerable.Range(0, rungs).Select(i => (100.0 * i, Across(i, 0)))).Kept().Count()
        );

    /// <summary>By hand: a bend of 10 µm does not show, one of 11 does; its two ends are as straight as before.</summary>
    [Theory]
    [InlineData(10, 2)]
    [InlineData(11, 3)]
    public void WhatStandsAsideIsKept(int aside, int kept) =>
        Assert.Equal(
            kept,
            new RungThinning([(0, Across(0, 0)), (100, Across(1, aside)), (200, Across(2, 0))]).Kept().Count()
        );

    /// <summary>
    /// A straight column on a slant, whose ends are whole micrometres: looked at again for each that follows, its 20,000
    /// rungs took 20 million looks.
    /// </summary>
    [Fact]
    public void AStraightColumnIsLookedAtOnce()
    {
        var thinning = new RungThinning(
            Enumerable
                .Range(0, 20_000)
                .Select(i =>
                    (
                        100.0 * i,
                        new Rung(
                            Point.FromMillimetres(0.0927 * i, 0.0375 * i),
                            Point.FromMillimetres(0.5 + (0.0927 * i), 0.0374 * i)
                        )
                    )
                )
        );
        Assert.InRange(thinning.Kept().Count(), 10, 12);
        Assert.InRange(thinning.Looks, 0, 20_000);
    }

    /// <summary>Whatever a column does, the same rungs stay as when every one is looked at each time.</summary>
    [Fact]
    public void TheSameRungsStayAsByLookingAtAll() =>
        (
            from steps in Gen.Select(Gen.Int[0, 200], Gen.Int[-14, 14], Gen.Int[-14, 14], Gen.Int[0, 9]).Array[2, 60]
            from bend in Gen.Int[-3, 3]
            select Column(steps, bend)
        ).Holds(column => Assert.Equal(Plainly(column), new RungThinning(column).Kept()), cases: 500);

    /// <summary>Where a column goes nowhere there is no straight way, however its rungs move meanwhile.</summary>
    [Fact]
    public void RungsAtOnePlaceSayNothingOfEachOther()
    {
        List<(double, Rung)> column =
        [
            .. Enumerable.Range(1, 3).Select(i => (0.0, new Rung(new(900 * i, 700 * i), new(800 * i, 600 * i)))),
        ];
        Assert.Equal(column.Select(r => r.Item2), new RungThinning(column).Kept());
    }

    private static List<(double At, Rung Rung)> Column((int Way, int Left, int Right, int Turned)[] steps, int bend)
    {
        var (at, slant) = (0, 0);
        var column = new List<(double, Rung)>();
        foreach (var (way, left, right, turned) in steps)
        {
            // Now and then two rungs stand at one place, or are the same.
            at += turned == 0 ? 0 : way;
            slant += turned > 7 ? bend : 0;
            var aside = at * slant / 20;
            column.Add((at, new(new(at, aside + left), new(at, 500 + aside + right))));
        }
        return column;
    }

    private static List<Rung> Plainly(List<(double At, Rung Rung)> column)
    {
        var (kept, stay) = (0, new List<Rung>());
        for (var i = 0; i < column.Count; i++)
        {
            var isInner = i > 0 && i < column.Count - 1;
            if ((isInner && Enumerable.Range(kept + 1, i - kept).All(Near)) || (i > 0 && Same()))
                continue;
            kept = i;
            stay.Add(column[i].Rung);

            bool Same() => column[i].Rung == column[kept].Rung;

            bool Near(int k)
            {
                var ((first, a), (last, b), (place, rung)) = (column[kept], column[i + 1], column[k]);
                var share = (place - first) / (last - first);
                return a.Left.Towards(b.Left, share).DistanceTo(rung.Left) <= 10
                    && a.Right.Towards(b.Right, share).DistanceTo(rung.Right) <= 10;
            }
        }
        return stay;
    }

    private static Rung Across(int place, int aside) => new(new(100 * place, aside), new(100 * place, 500 + aside));
}
