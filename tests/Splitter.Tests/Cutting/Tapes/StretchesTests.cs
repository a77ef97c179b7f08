using System.Collections.Immutable;
using Splitter.Artwork.Tapes;
using Splitter.Cutting.Tapes;
using Splitter.Geometry;
using static Splitter.Tests.Cutting.HandPlan;

namespace Splitter.Tests.Cutting.Tapes;

/// <summary>
/// What the first of two parts keeps of a thread across the seam at x = 50 mm. Its even rows and its lines reach 2 mm
/// past it, its odd rows and columns 1.2 mm. Places in millimetres, on one level.
/// </summary>
public sealed class StretchesTests
{
    [Theory]
    [InlineData(StitchKind.Fill, 0, 52)]
    [InlineData(StitchKind.Fill, 2, 52)]
    [InlineData(StitchKind.Fill, 1, 51.2)]
    [InlineData(StitchKind.Run, 1, 52)]
    internal void ItEndsWhereTheOverlapDoes(StitchKind kind, int row, double end)
    {
        var kept = Assert.Single(Kept(kind, row, 41.5, 45.5, 49.5, 53.5, 57.5));
        Assert.Equal([41.5, 45.5, 49.5, end], Places(kept));
        Assert.Equal(
            [StitchSource.Original, StitchSource.Original, StitchSource.Original, StitchSource.Repeated],
            kept.Stitches.Select(s => s.Source)
        );
        Assert.Equal((true, false), kept.IsWhole);
    }

    [Fact]
    public void AThreadThatComesOverTheSeamBeginsWithinTheOverlap()
    {
        var kept = Assert.Single(Kept(StitchKind.Fill, 0, 57.5, 53.5, 49.5, 45.5));
        Assert.Equal([52, 49.5, 45.5], Places(kept));
        // The hole at 49.5 ends a stitch of the neighbour.
        Assert.Equal(
            [StitchSource.Repeated, StitchSource.Repeated, StitchSource.Original],
            kept.Stitches.Select(s => s.Source)
        );
        Assert.Equal((false, true), kept.IsWhole);
    }

    /// <summary>The neighbour's stitch from 50.4 to 51.6 lies within the overlap, whole.</summary>
    [Fact]
    public void StitchesWithinTheOverlapAreRepeated()
    {
        var kept = Assert.Single(Kept(StitchKind.Run, 0, 44.4, 48.4, 50.4, 51.6, 56));
        Assert.Equal([44.4, 48.4, 50.4, 51.6], Places(kept));
        Assert.Equal(StitchSource.Repeated, kept.Stitches[^1].Source);
    }

    /// <summary>Half a millimetre of a stitch is worth a hole, less is not.</summary>
    [Theory]
    [InlineData(51.5, 52)]
    [InlineData(51.6, 51.6)]
    public void AnEndThatIsTooShortIsLeftOut(double last, double end) =>
        Assert.Equal(end, Places(Assert.Single(Kept(StitchKind.Run, 0, 45, 49, last, 55)))[^1]);

    /// <summary>Of a column those stitches whose middle the overlap holds, each whole.</summary>
    [Fact]
    public void AColumnEndsWithAWholeStitch()
    {
        double[] places = [.. Enumerable.Range(0, 12).Select(i => 47.9 + (0.4 * i))];
        var kept = Assert.Single(Kept(StitchKind.Satin, 0, places));
        // Its middle lies at 50.9; that of the next one at 51.3.
        Assert.Equal(51.1, Places(kept)[^1], 0.01);
    }

    [Theory]
    [InlineData(StitchKind.Underlay)]
    [InlineData(StitchKind.Travel)]
    internal void WhatLiesBelowEndsAtTheSeam(StitchKind kind)
    {
        var kept = Assert.Single(Kept(kind, 0, 45.5, 49.5, 50.1, 50.5, 51, 55));
        // The stitch to 50.1 begins on this side, and the earlier part takes it.
        Assert.Equal([45.5, 49.5, 50.1], Places(kept));
        Assert.DoesNotContain(kept.Stitches, s => s.Source == StitchSource.Repeated);
    }

    /// <summary>All of it lies past the seam: rows are repeated, whoever else sews there; a line is the neighbour's.</summary>
    [Theory]
    [InlineData(StitchKind.Fill, 1)]
    [InlineData(StitchKind.Run, 0)]
    internal void RowsPastTheSeamAreRepeatedAndLinesAreNot(StitchKind kind, int count)
    {
        var kept = Kept(kind, 0, 51.9, 50.2, 51.9);
        Assert.Equal(count, kept.Count);
        Assert.All(kept.SelectMany(k => k.Stitches), s => Assert.Equal(StitchSource.Repeated, s.Source));
    }

    /// <summary>To the neighbour and back again: a stretch on either side of it.</summary>
    [Fact]
    public void AThreadThatComesBackIsTwoStretches()
    {
        var kept = Kept(StitchKind.Run, 0, 41, 49, 57, 58, 49, 41);
        Assert.Equal(["41 49 52", "52 49 41"], kept.Select(k => string.Join(' ', Places(k))));
        Assert.Equal([(true, false), (false, true)], kept.Select(k => k.IsWhole));
    }

    [Fact]
    public void AHoleAloneIsKeptByItsOwner()
    {
        Assert.Equal([45], Places(Assert.Single(Kept(StitchKind.Run, 0, 45))));
        Assert.Empty(Kept(StitchKind.Run, 0, 55));
    }

    /// <summary>A thread that begins in the last hole of the one before repeats it.</summary>
    [Theory]
    [InlineData(ThreadArrival.Cut, StitchSource.Original)]
    [InlineData(ThreadArrival.Loose, StitchSource.Original)]
    [InlineData(ThreadArrival.GoesOn, StitchSource.Repeated)]
    internal void TheFirstHoleIsItsOwnUnlessTheThreadGoesOn(ThreadArrival arrival, StitchSource source) =>
        Assert.Equal(source, Assert.Single(Kept(StitchKind.Run, 0, arrival, null, 41, 45)).Stitches[0].Source);

    /// <summary>An earlier part has finished a line at x = 51 mm: the overlap ends before it.</summary>
    [Fact]
    public void AnOverlapEndsBeforeFinishedWork()
    {
        var line = new FinishedWork(Of([null]).Hoopings[0].Ground);
        line.AddEarlier(At(51.1, 15), At(51.1, 25));
        var kept = Assert.Single(Kept(StitchKind.Run, 0, ThreadArrival.Cut, line, 41, 45, 49, 53));
        Assert.InRange(Places(kept)[^1], 50, 51);
    }

    private static List<KeptThread> Kept(StitchKind kind, int row, params double[] places) =>
        Kept(kind, row, ThreadArrival.Cut, null, places);

    private static List<KeptThread> Kept(
        StitchKind kind,
        int row,
        ThreadArrival arrival,
        FinishedWork? finished,
        params double[] places
    )
    {
        var plan = Of([null]);
        var nothing = plan.Hoopings.Select(h => new FinishedWork(h.Ground)).ToImmutableArray();
        var owners = new StitchOwners(plan, [.. plan.Hoopings.Select(h => h.Territory)], nothing);
        var (far, near) = (UpTo(52), UpTo(51.2));
        var reach = new Splitter.Cutting.Reach(UpTo(50), far, near, far, near);
        var thread = new OriginalThread(0, 1, arrival, [.. places.Select(x => new OriginalStitch(At(x), kind, row))]);
        return
        [
            .. new Stretches(owners, reach, finished ?? nothing[0], 0).Of(
                thread,
                owners.Divided(thread.Stitches),
                owners.Of(thread.Stitches)
            ),
        ];

        static Region UpTo(double right) => Region.Of(new Box(0, 0, Mm(right), Mm(40)));
    }

    private static double[] Places(KeptThread thread) => [.. thread.Stitches.Select(s => s.At.X / 1000.0)];

    private static Point At(double x, double y = 20) => new(Mm(x), Mm(y));
}
