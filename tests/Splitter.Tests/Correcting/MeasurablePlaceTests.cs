using Splitter.Artwork;
using Splitter.Correcting;
using Splitter.Geometry;
using Splitter.Planning;

namespace Splitter.Tests.Correcting;

/// <summary>Where a part can be measured: a hole shows both ways, an edge only that across it.</summary>
public sealed class MeasurablePlaceTests
{
    private static readonly Drawing Drawing = Samples.Drawing(Samples.Rectangle("sheet", 0, 0, 90, 90));

    /// <summary>The first cross lies on the sheet's upper edge, the second on a corner; the part is set by that and one more.</summary>
    [Fact]
    public void CrossesThenCornersEachWithWhatItShows()
    {
        var places = MeasurablePlace.Of(
            Drawing,
            Plan([new(Point.FromMillimetres(40, 0), 0, "sheet"), new(Point.FromMillimetres(10, 20), 0, "A1")]),
            1
        );
        Assert.Equal(["1", "2", "A1", "A2"], places.Select(p => p.Name));
        Assert.Equal(["sheet", "A1", "A1", "A2"], places.Select(p => p.On));
        Assert.Equal([true, false, false, false], places.Select(p => p.Across is not null));
        Assert.Equal(1, Math.Abs(places[0].Across!.Value.Y), 6);
        Assert.Equal([40, 10, 10, 10], places.Select(p => p.At.X / 1000));
    }

    private static Plan Plan(params AlignmentStitch[] crosses) =>
        new()
        {
            Hoop = Samples.Hoop(100, 100),
            Hoopings =
            [
                .. Enumerable
                    .Range(0, 2)
                    .Select(i => new Hooping
                    {
                        Letter = Letters.Of(i),
                        Field = new(Samples.Hoop(100, 100), default, Turn.None, 0),
                        Ground = default,
                        Territory = Region.Empty,
                        Takes = i == 0 ? [] : [0, 1],
                        Gives = [],
                        Alignments = i == 0 ? [] : [.. crosses],
                    }),
            ],
            LowerBound = 2,
            Owners = [null],
            SeamLines = [],
            Joins = [],
            Corners = [Corner("A1", 20), Corner("A2", 70)],
            PlacementLines = [],
            Seams = new(0, 0, 1),
        };

    private static Corner Corner(string id, int y) =>
        new(id, Point.FromMillimetres(10, y), Point.FromMillimetres(18, y), Point.FromMillimetres(10, y + 8), 0, [1]);
}
