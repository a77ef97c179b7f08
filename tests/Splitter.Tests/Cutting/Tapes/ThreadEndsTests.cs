using System.Collections.Immutable;
using Splitter.Artwork.Tapes;
using Splitter.Cutting.Tapes;
using Splitter.Geometry;

namespace Splitter.Tests.Cutting.Tapes;

/// <summary>
/// Where a part ties its threads, and where it cuts them: three threads of a tape, 5 mm each with 5 mm between them,
/// of which a part sews some.
/// </summary>
public sealed class ThreadEndsTests
{
    [Theory]
    [InlineData(ThreadArrival.Cut, true)]
    [InlineData(ThreadArrival.Loose, false)]
    [InlineData(ThreadArrival.GoesOn, null)]
    internal void WhatFollowsAsOnTheTapeIsAsItWas(ThreadArrival arrival, bool? isCut)
    {
        var settled = Settle([Of(0), Of(1, arrival), Of(2, arrival)], 0, 1, 2);
        Assert.Equal([null, isCut, isCut], settled.Select(t => t.IsCutBefore));
        Assert.All(settled, t => Assert.Equal((false, false), t.IsTied));
    }

    /// <summary>The tape ties what it cuts itself; where its thread went on, it must be tied now.</summary>
    [Theory]
    [InlineData(ThreadArrival.Cut, false)]
    [InlineData(ThreadArrival.Loose, true)]
    [InlineData(ThreadArrival.GoesOn, true)]
    internal void WhereAThreadIsMissingItsNeighboursAreTiedUnlessTheTapeDidThat(ThreadArrival arrival, bool isTied)
    {
        var settled = Settle([Of(0), Of(1, arrival), Of(2, arrival)], 0, 2);
        Assert.Equal([(false, isTied), (isTied, false)], settled.Select(t => t.IsTied));
        Assert.All(settled, t => Assert.Null(t.IsCutBefore));
    }

    [Fact]
    public void AThreadThatASeamCutsIsTiedThere()
    {
        var ends = new ThreadEnds([Of(0)]);
        Assert.Equal((false, true), Settled(ends, Kept(0) with { IsWhole = (true, false) }).IsTied);
        Assert.Equal((true, false), Settled(ends, Kept(0) with { IsWhole = (false, true) }).IsTied);
        Assert.Equal((true, true), Settled(ends, Kept(0) with { IsWhole = (false, false) }).IsTied);
    }

    /// <summary>After what a seam cuts off nothing goes on, though it has the next number.</summary>
    [Fact]
    public void AfterACutThreadTheNextOneDoesNotGoOn()
    {
        var ends = new ThreadEnds([Of(0), Of(1, ThreadArrival.GoesOn)]);
        KeptThread[] settled =
        [
            .. ends.Settle([Piece(Kept(0) with { IsWhole = (true, false) }, Kept(1))]).Single().Threads,
        ];
        Assert.Equal([(false, true), (true, false)], settled.Select(t => t.IsTied));
    }

    /// <summary>Between two blocks of colour the thread is another one.</summary>
    [Fact]
    public void AnotherBlockDoesNotGoOn()
    {
        var settled = Settle([Of(0), Of(1, ThreadArrival.Loose) with { Block = 2 }], 0, 1);
        Assert.Equal([(false, true), (true, false)], settled.Select(t => t.IsTied));
        Assert.All(settled, t => Assert.Null(t.IsCutBefore));
    }

    /// <summary>A loose move of three jumps, each 12.1 mm at most, is one that the machine cuts.</summary>
    [Theory]
    [InlineData(20, false)]
    [InlineData(60, true)]
    public void AMoveThatBecameTooLongToBeLooseIsTied(double far, bool isTied)
    {
        ImmutableArray<OriginalThread> tape = [Of(0), Of(1, ThreadArrival.Loose, far)];
        var settled = Settle(tape, 0, 1);
        Assert.Equal([(false, isTied), (isTied, false)], settled.Select(t => t.IsTied));
    }

    /// <summary>Pieces keep their own threads, in order.</summary>
    [Fact]
    public void EveryPieceHasItsThreads()
    {
        var ends = new ThreadEnds([Of(0), Of(1), Of(2)]);
        var settled = ends.Settle([Piece(Kept(0), Kept(1)), Piece(Kept(2))]);
        Assert.Equal(["0 1", "2"], settled.Select(p => string.Join(' ', p.Threads.Select(t => t.Number))));
    }

    private static ImmutableArray<KeptThread> Settle(ImmutableArray<OriginalThread> tape, params int[] sewn) =>
        new ThreadEnds(tape)
            .Settle([Piece([.. sewn.Select(n => Kept(n, tape[n].Stitches[0].At.X / 1000.0))])])
            .Single()
            .Threads;

    private static KeptThread Settled(ThreadEnds ends, KeptThread thread) =>
        Assert.Single(ends.Settle([Piece(thread)]).Single().Threads);

    private static OriginalThread Of(int number, ThreadArrival arrival = ThreadArrival.Cut, double? from = null) =>
        new(
            number,
            1,
            arrival,
            [.. Places(from ?? (10 * number)).Select(at => new OriginalStitch(at, StitchKind.Run, 0))]
        );

    private static KeptThread Kept(int number, double? from = null) =>
        new([.. Places(from ?? (10 * number)).Select(at => new KeptStitch(at, StitchKind.Run, StitchSource.Original))])
        {
            Number = number,
            IsWhole = (true, true),
        };

    private static IEnumerable<Point> Places(double from) =>
        [Point.FromMillimetres(from, 0), Point.FromMillimetres(from + 5, 0)];

    private static KeptPiece Piece(params KeptThread[] threads) =>
        new()
        {
            Shape = Samples.Run("line", 0, 0, 50, 0),
            Hooping = 0,
            Threads = [.. threads],
        };
}
