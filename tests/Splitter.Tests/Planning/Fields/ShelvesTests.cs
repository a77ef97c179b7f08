using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fields;
using Splitter.Planning.Fields.Covering;

namespace Splitter.Tests.Planning.Fields;

/// <summary>
/// Covers in rows, and in columns. A field sews 100 x 60 mm, of which a millimetre at most is lost to the cells that the
/// drawing is looked at in. Nothing is asked of common ground. Millimetres.
/// </summary>
public sealed class ShelvesTests
{
    private static readonly FieldTemplate Template = new(Samples.Hoop(100, 60), 0, 0);

    /// <summary>A sheet of fields side by side, all the same way: as many as the ceil formula says, both ways.</summary>
    [Theory]
    [InlineData(95, 55, 1)]
    [InlineData(105, 55, 2)]
    [InlineData(195, 55, 2)]
    [InlineData(95, 65, 2)]
    [InlineData(290, 115, 6)]
    [InlineData(305, 125, 12)]
    public void ASheetTakesItsColumnsTimesItsRows(int width, int height, int fields) =>
        Assert.All(Covers([Turn.None], [], Sheet(0, 0, width, height)), cover => Assert.Equal(fields, cover.Length));

    /// <summary>A row that stands and one that lies: 100 + 60 mm deep, five upright ones above three level ones.</summary>
    [Fact]
    public void ARowMayLieTheOtherWay() =>
        Assert.Equal(8, Covers([Turn.None, Turn.Quarter], [], Sheet(0, 0, 290, 155)).Min(cover => cover.Length));

    /// <summary>Two bars end to end: two fields do, and each bar lies in one of them.</summary>
    [Fact]
    public void WhatStaysWholeLiesInOneField()
    {
        ImmutableArray<Box> wholes = [new(0, 0, 80_000, 50_000), new(80_000, 0, 170_000, 50_000)];
        foreach (var cover in Covers([Turn.None], wholes, Sheet(0, 0, 170, 50)))
        {
            Assert.Equal(2, cover.Length);
            Assert.All(wholes, whole => Assert.Contains(cover, field => field.Usable.Contains(whole)));
        }
    }

    /// <summary>It begins in the first row, that ends before it does: the second row begins where it can hold it.</summary>
    [Theory]
    [InlineData(40, 80)]
    [InlineData(55, 65)]
    [InlineData(10, 60)]
    public void SoItIsFromRowToRow(int top, int bottom)
    {
        var whole = new Box(10_000, top * 1000, 60_000, bottom * 1000);
        var covers = Covers([Turn.None], [whole], Sheet(0, 0, 95, 115));
        Assert.NotEmpty(covers);
        Assert.All(covers, cover => Assert.Contains(cover, field => field.Usable.Contains(whole)));
    }

    [Fact]
    public void WhatNoFieldHoldsHasNoCover() =>
        Assert.Empty(Covers([Turn.None], [new(0, 0, 110_000, 20_000)], Sheet(0, 0, 110, 50)));

    /// <summary>Rows as well as columns: as many for the drawing with x and y exchanged.</summary>
    [Fact]
    public void RowsAreColumnsOfTheDrawingOnItsSide()
    {
        var (upright, level) = (
            Covers([Turn.None], [], Samples.Ground(0, 0, 250, 40, 130, 210)),
            Covers([Turn.Quarter], [], Samples.Ground(0, 0, 40, 250, 210, 130))
        );
        Assert.Equal(upright.Select(c => c.Length).Order(), level.Select(c => c.Length).Order());
    }

    private static Region Sheet(int left, int top, int right, int bottom) =>
        Samples.Ground(left, top, right, top, right, bottom, left, bottom);

    /// <summary>All that is drawn lies in the fields of each.</summary>
    private static ImmutableArray<ImmutableArray<Field>> Covers(
        ImmutableArray<Turn> turns,
        ImmutableArray<Box> wholes,
        params ImmutableArray<Region> drawn
    )
    {
        var task = new CoverTask(drawn, wholes, Template, turns, null, [], []);
        ImmutableArray<ImmutableArray<Field>> covers = [.. Shelves.Covers(task)];
        Assert.All(
            covers,
            cover =>
                Assert.True(
                    Polygons
                        .Subtract(Polygons.Union(drawn), Polygons.Union(cover.Select(f => Region.Of(f.Usable))))
                        .IsEmpty
                )
        );
        return covers;
    }
}
