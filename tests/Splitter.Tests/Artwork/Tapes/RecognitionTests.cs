using Splitter.Artwork;
using Splitter.Artwork.Tapes;
using Splitter.Geometry;
using Splitter.Tapes;

namespace Splitter.Tests.Artwork.Tapes;

/// <summary>What tapes that are made by hand are taken for.</summary>
public sealed class RecognitionTests
{
    [Fact]
    public void LevelRowsAreAFill()
    {
        var fill = Assert.IsType<FillShape>(Assert.Single(Shapes(new HandTape().Rows(0, 0, 40, 20))));
        Assert.InRange(Math.Abs(fill.Style.Angle) % 180, -1, 1);
        Assert.InRange(fill.Style.RowSpacing, 350, 450);
        Assert.InRange(fill.Footprint.Area / 1e6, 40 * 20, 41.2 * 21.2);
        // Each row has the next number.
        Assert.Equal(50, fill.Original.Single().Stitches[^1].Row);
    }

    /// <summary>Rows that follow a line, up to half a circle and more of them.</summary>
    [Theory]
    [InlineData(60)]
    [InlineData(120)]
    [InlineData(180)]
    [InlineData(200)]
    public void CurvedRowsAreAFill(double angle)
    {
        var fill = Assert.IsType<FillShape>(Assert.Single(Shapes(new HandTape().Arcs(30, 50, angle))));
        Assert.InRange(fill.Style.RowSpacing, 350, 450);
        Assert.Equal(50, fill.Original.Single().Stitches[^1].Row);
    }

    [Fact]
    public void AZigzagOfShortAdvanceIsAColumn()
    {
        var satin = Assert.IsType<SatinShape>(Assert.Single(Shapes(new HandTape().Column(0, 0, 4, 30))));
        Assert.InRange(satin.Style.RowSpacing, 350, 450);
        var column = Assert.Single(satin.Columns);
        Assert.All(column.Rungs, r => Assert.InRange(r.Width, 3900, 4100));
        Assert.InRange(column.Rungs[^1].Middle.Y - column.Rungs[0].Middle.Y, 29_000, 30_000);
    }

    [Fact]
    public void AnythingElseIsALine()
    {
        Assert.IsType<RunShape>(Assert.Single(Shapes(new HandTape().Sew((0, 0)).Run(50, 0).Run(50, 50).Run(0, 0))));
        // There and back on the same line, stitch by stitch: no rows.
        var bean = new HandTape().Sew((0, 0));
        for (var i = 0; i < 30; i++)
            bean.Sew(((i + 1) * 2.5, 0), (i * 2.5, 0), ((i + 1) * 2.5, 0));
        Assert.IsType<RunShape>(Assert.Single(Shapes(bean)));
        // A curve turns back only slowly.
        var ring = new HandTape();
        for (var i = 0; i <= 60; i++)
            ring.Sew((20 + (20 * Math.Cos(i * Math.PI / 30)), 20 + (20 * Math.Sin(i * Math.PI / 30))));
        Assert.IsType<RunShape>(Assert.Single(Shapes(ring)));
    }

    /// <summary>Stitches of a tie lie on each other, and what is sewn between two is no column with them.</summary>
    [Fact]
    public void AWaveWithTiesIsALine()
    {
        var wave = Tied(new HandTape(), 0, 10);
        for (var x = 2; x <= 112; x += 2)
            wave.Sew((x, 10 + (3 * Math.Sin(x * 0.2))));
        Assert.IsType<RunShape>(Assert.Single(Shapes(Tied(wave, 112, 10 + (3 * Math.Sin(112 * 0.2))))));

        static HandTape Tied(HandTape tape, double x, double y) =>
            tape.Sew((x, y), (x + 0.7, y), (x, y), (x + 0.7, y), (x, y));
    }

    /// <summary>Two uprights, a long way between them, and what joins them: an H.</summary>
    [Fact]
    public void ColumnsOfALetterAreOneThingWithTheWaysBetween()
    {
        var letter = new HandTape().Run(2, 30).Run(2, 0).Column(0, 0, 4, 30);
        letter.Run(18, 0).Run(18, 30).Run(18, 0).Column(16, 0, 4, 30);
        letter.Run(4, 15).Run(16, 15).Run(4, 15);
        for (var i = 0; i <= 60; i++)
            letter.Sew((4 + (i * 0.2), i % 2 == 0 ? 13 : 17));
        Assert.IsType<SatinShape>(Assert.Single(Shapes(letter)));
    }

    /// <summary>
    /// A run along the edge and open rows across lie below a fill, two sections of it side by side, a tie at each end.
    /// </summary>
    [Fact]
    public void WhatAFillHidesIsPartOfIt()
    {
        var tape = new HandTape()
            .Sew((1, 1), (1.6, 1), (1, 1))
            .Run(39, 1)
            .Run(39, 19)
            .Run(1, 19)
            .Run(1, 1)
            .Rows(1, 1, 38, 18, 2)
            .Rows(0, 0, 20, 20)
            .Run(20.2, 0)
            .Rows(20.2, 0, 20, 20)
            .Sew((39.5, 20), (40.2, 20), (39.5, 20));
        var fill = Assert.IsType<FillShape>(Assert.Single(Shapes(tape)));
        Assert.InRange(fill.Style.RowSpacing, 350, 450);
        var kinds = fill.Original.Single().Stitches.Select(s => s.Kind).ToList();
        Assert.True(kinds.IndexOf(StitchKind.Underlay) < kinds.IndexOf(StitchKind.Fill));
        Assert.Contains(StitchKind.Travel, kinds);
    }

    /// <summary>Lines across two fills that are none, as their rows are not equally dense.</summary>
    [Fact]
    public void WhatNeighbouringFillsHideTogetherIsPartOfTheLargerOne()
    {
        var shapes = Shapes(
            new HandTape()
                .Rows(0, 0, 60, 20, 5)
                .Jump(0, 0, 12)
                .Rows(0, 0, 34, 20)
                .Jump(34.4, 0, 4)
                .Rows(34.4, 0, 26, 20, 0.6)
        );
        Assert.Equal([typeof(FillShape), typeof(FillShape)], shapes.Select(s => s.GetType()));
        Assert.Equal([0, 1], shapes[0].Original.Select(t => t.Number));
        Assert.All(shapes[0].Original[0].Stitches, s => Assert.Equal(StitchKind.Underlay, s.Kind));
    }

    [Fact]
    public void WhatIsSewnOverAFillIsNot()
    {
        var shapes = Shapes(new HandTape().Rows(0, 0, 40, 20).Run(2, 2).Run(38, 10).Column(38, 10, -4, 8));
        Assert.Equal([typeof(FillShape), typeof(RunShape), typeof(SatinShape)], shapes.Select(s => s.GetType()));
    }

    /// <summary>Its threads keep their numbers; what lies under one section and over none is below it.</summary>
    [Theory]
    [InlineData(60, 0, true)] // Beside it.
    [InlineData(10, 5, true)] // Over the first section.
    [InlineData(10, 28, false)] // Under the second.
    public void SectionsOfAFillAreOneWhateverIsSewnBetween(double x, double y, bool isFillFirst)
    {
        var shapes = Shapes(
            new HandTape().Rows(0, 0, 40, 20).Jump(x, y, 4).Column(x, y, 5, 8).Jump(0, 20.4, 4).Rows(0, 20.4, 40, 20)
        );
        Assert.Equal(2, shapes.Count);
        var fill = Assert.IsType<FillShape>(shapes[isFillFirst ? 0 : 1]);
        var satin = Assert.IsType<SatinShape>(shapes[isFillFirst ? 1 : 0]);
        Assert.Equal([0, 2], fill.Original.Select(t => t.Number));
        Assert.Equal([1], satin.Original.Select(t => t.Number));
        Assert.InRange(fill.Footprint.Area / 1e6, 40 * 40.4, 41.2 * 41.6);
    }

    /// <summary>What lies over one section and under another, be it through something else, has its place between.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void AFillEndsBeforeASectionThatLiesOverSomethingUponIt(bool isThroughAnother)
    {
        var tape = new HandTape().Rows(0, 0, 40, 20).Jump(10, 12, 4).Column(10, 12, 5, isThroughAnother ? 6 : 20);
        if (isThroughAnother)
            tape.Jump(9, 17, 4).Column(9, 17, 50, 15);
        var shapes = Shapes(tape.Jump(0, 20.4, 4).Rows(0, 20.4, 40, 20).Jump(0, 40.8, 4).Rows(0, 40.8, 40, 10));
        Assert.Equal([typeof(FillShape), typeof(SatinShape)], shapes.Select(s => s.GetType()).Take(2));
        var last = Assert.IsType<FillShape>(shapes[^1]);
        // Sections that nothing parts are still one.
        Assert.Equal(2, last.Original.Length);
        Assert.Equal(
            Enumerable.Range(0, shapes.Sum(s => s.Original.Length)),
            shapes.SelectMany(s => s.Original).Select(t => t.Number)
        );
    }

    /// <summary>Rows of the same thread, direction and distance, upon a fill or upon two of its sections.</summary>
    [Theory]
    [InlineData(10, 5)]
    [InlineData(10, 15)]
    public void AMotifUponAFillIsNoneOfItsSections(double x, double y)
    {
        var shapes = Shapes(
            new HandTape()
                .Rows(0, 0, 40, 20)
                .Jump(0, 20.4, 4)
                .Rows(0, 20.4, 40, 20)
                .Jump(x, y, 4)
                .Rows(x, y, 8, 10)
                .Jump(x + 8.2, y, 4)
                .Rows(x + 8.2, y, 8, 10)
        );
        Assert.Equal([0, 1, 2, 3], shapes.SelectMany(s => s.Original).Select(t => t.Number));
        Assert.Equal([2, 2], shapes.Select(s => Assert.IsType<FillShape>(s).Original.Length));
    }

    /// <summary>A later section of the fill touches the motif, too, and goes with the fill.</summary>
    [Fact]
    public void AMotifIsNotJoinedToItsGroundByALaterSection()
    {
        var shapes = Shapes(
            new HandTape().Rows(0, 0, 40, 20).Jump(10, 10, 4).Rows(10, 10, 8, 10).Jump(0, 20.4, 4).Rows(0, 20.4, 40, 20)
        );
        Assert.Equal([0, 2, 1], shapes.SelectMany(s => s.Original).Select(t => t.Number));
        Assert.Equal(2, shapes.Count);
    }

    /// <summary>A line over rows, from one section of a fill to the next, is seen: only later thread hides.</summary>
    [Fact]
    public void WhatIsSewnOverRowsIsNotHiddenByThem()
    {
        var fill = Assert.IsType<FillShape>(
            Assert.Single(Shapes(new HandTape().Rows(0, 0, 40, 20).Run(38, 10).Run(0.2, 19.8).Rows(0, 20.4, 40, 20)))
        );
        var stitches = fill.Original.Single().Stitches;
        Assert.Equal(StitchKind.Run, stitches.Single(s => s.At == new Point(38_000, 10_000)).Kind);
        Assert.DoesNotContain(stitches, s => s.Kind == StitchKind.Travel);
    }

    /// <summary>The largest tape that is taken, all in one hole: the effort grows no faster than its length.</summary>
    [Fact]
    public void StitchesOfNoLengthAreNoEffort() =>
        Assert.Single(Pass.Of([new Point(0, 0), .. Enumerable.Repeat(new Point(1000, 0), 1_000_000)]));

    /// <summary>Empty records are passed over, and counted.</summary>
    [Fact]
    public void AShapeIsPlacedAtTheRecordThatBeginsIt()
    {
        var bytes = new HandTape().Sew((0, 0)).Run(20, 0).Jump(40, 0, 4).Rows(40, 0, 20, 20).Bytes;
        // Nine holes of the line and four jumps come before; and an empty record after the first.
        var at = TapeHeader.Length + 3;
        var tape = TapeReader.Read("hand.dst", (byte[])[.. bytes[..at], 0, 0, 0, .. bytes[at..]]).Value;
        Assert.Equal([1, 15], Shapes(TapeSheet.Of(tape)).Select(s => s.Place.Column));
    }

    [Fact]
    public void FillsApartAreShapesOfTheirOwnAndColumnsOfALetterAreOne()
    {
        var tape = new HandTape()
            .Rows(0, 0, 20, 20)
            .Jump(40, 0, 4)
            .Rows(40, 0, 20, 20)
            .Jump(80, 0, 4)
            .Column(80, 0, 3, 20)
            .Jump(83, 0, 3)
            .Column(83, 0, 3, 20);
        var shapes = Shapes(tape);
        Assert.Equal([typeof(FillShape), typeof(FillShape), typeof(SatinShape)], shapes.Select(s => s.GetType()));
        Assert.Equal(2, ((SatinShape)shapes[2]).Columns.Length);
    }

    [Fact]
    public void ThreadsBeginAsTheTapeHasIt()
    {
        var shapes = Shapes(
            new HandTape()
                .Sew((0, 0))
                .Run(20, 0)
                .Jump(30, 0, 2) // Few jumps: the thread lies loose.
                .Run(50, 0)
                .Sew((49.4, 0), (50, 0), (49.4, 0), (50, 0)) // Tied, and then cut by hand.
                .Jump(60, 0, 1)
                .Run(80, 0)
                .Jump(100, 0, 3)
                .Run(120, 0)
        );
        Assert.Equal(
            [ThreadArrival.Cut, ThreadArrival.Loose, ThreadArrival.Cut, ThreadArrival.Cut],
            shapes.SelectMany(s => s.Original).Select(t => t.Start)
        );
    }

    /// <summary>
    /// The ground of a shape holds every stitch of it: a field that holds the ground can sew the shape whole.
    /// </summary>
    [Fact]
    public void TheGroundHoldsTheStitches()
    {
        foreach (var shape in Shapes(new HandTape().Rows(0, 0, 30, 9).Run(80, 40).Column(80, 40, 7, 20).Run(3, 70)))
        {
            var holds = Polygons.Containment(shape.Footprint);
            Assert.All(shape.Original.SelectMany(t => t.Stitches), s => Assert.True(holds(s.At.X, s.At.Y), $"{s.At}"));
        }
    }

    internal static IReadOnlyList<Shape> Shapes(HandTape tape) => Shapes(TapeSheet.Of(tape.Tape));

    internal static IReadOnlyList<Shape> Shapes(TapeSheet sheet) =>
        [.. new TapeShapes("hand.dst", [.. sheet.Blocks.Select((_, i) => i)]).Of(sheet)];
}
