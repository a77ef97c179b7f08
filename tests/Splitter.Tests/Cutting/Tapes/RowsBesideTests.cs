using System.Collections.Immutable;
using Splitter.Artwork.Tapes;
using Splitter.Cutting.Tapes;
using Splitter.Geometry;

namespace Splitter.Tests.Cutting.Tapes;

/// <summary>Which rows of another section a part repeats: it sews rows of its own from 0 to 20 mm, 0 to 2 mm down.</summary>
public sealed class RowsBesideTests
{
    private static readonly ImmutableArray<(Point From, Point To)> Own =
    [
        .. Enumerable
            .Range(0, 6)
            .Select(row => (Point.FromMillimetres(0, 0.4 * row), Point.FromMillimetres(20, 0.4 * row))),
    ];

    [Theory]
    [InlineData(0, 2.4, true)] // A row further on.
    [InlineData(0, 4.6, true)]
    [InlineData(0, 6, false)] // 4 mm off: the fill's own edge lies between.
    [InlineData(22, 0, true)] // Beside their ends.
    [InlineData(25, 0, false)]
    public void RowsNearOnesOwnAreRepeated(double x, double y, bool isWorth) =>
        Assert.Equal(isWorth, new RowsBeside(Own).IsWorthSewing(Row(StitchKind.Fill, StitchSource.Repeated, x, y, 6)));

    [Theory]
    [InlineData(4.9, false)]
    [InlineData(5, true)]
    public void ShorterRowsThanFiveMillimetresAreNot(double length, bool isWorth) =>
        Assert.Equal(
            isWorth,
            new RowsBeside(Own).IsWorthSewing(Row(StitchKind.Fill, StitchSource.Repeated, 0, 2.4, length))
        );

    /// <summary>What lies below rows does not show, and asks for none beside it.</summary>
    [Theory]
    [InlineData(StitchKind.Underlay)]
    [InlineData(StitchKind.Travel)]
    internal void OnlyRowsCount(StitchKind kind) =>
        Assert.False(new RowsBeside(Own).IsWorthSewing(Row(kind, StitchSource.Repeated, 0, 2.4, 6)));

    [Theory]
    [InlineData(StitchSource.Original)]
    [InlineData(StitchSource.Divided)]
    internal void OnesOwnAreAlwaysSewn(StitchSource source) =>
        Assert.True(new RowsBeside([]).IsWorthSewing(Row(StitchKind.Run, source, 90, 90, 1)));

    /// <summary>Its first hole is the neighbour's, as wherever a row comes over the seam.</summary>
    [Fact]
    public void AStretchOfWhichSomeIsOnesOwnIsSewn()
    {
        var row = Row(StitchKind.Run, StitchSource.Original, 90, 90, 1);
        Assert.True(
            new RowsBeside([]).IsWorthSewing(
                row with
                {
                    Stitches = row.Stitches.SetItem(0, row.Stitches[0] with { Source = StitchSource.Repeated }),
                }
            )
        );
    }

    [Fact]
    public void WithoutRowsOfItsOwnAPartRepeatsNone() =>
        Assert.False(new RowsBeside([]).IsWorthSewing(Row(StitchKind.Fill, StitchSource.Repeated, 0, 0, 20)));

    /// <summary>To the right, in two stitches.</summary>
    private static KeptThread Row(StitchKind kind, StitchSource source, double x, double y, double length) =>
        new([
            .. new[] { 0, 0.4, 1 }.Select(share => new KeptStitch(
                Point.FromMillimetres(x + (share * length), y),
                kind,
                source
            )),
        ])
        {
            Number = 0,
            IsWhole = (false, false),
        };
}
