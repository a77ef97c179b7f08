using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Cutting;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Tests.Cutting;

/// <summary>Two fields that meet at x = 50 mm, over small drawings whose best shares anyone can see.</summary>
public sealed class SharingTests
{
    private static readonly OverlapRules Rules = new();

    [Fact]
    public void AScrapGoesToTheNeighbour()
    {
        // A nub of 2 x 2 mm reaches over the seam.
        var shape = Samples.Fill("bay", 10, 0, 50, 0, 50, 20, 52, 20, 52, 22, 50, 22, 50, 40, 10, 40);
        var piece = Assert.Single(Cut([null], [], shape).Cast<FillPiece>());
        Assert.Equal(0, piece.Hooping);
        Assert.Equal(shape.Footprint.Area, piece.Core.Area);
        Assert.Equal(52_000, piece.EvenRows.Bounds.Right);
        Assert.Equal(52_000, piece.OddRows.Bounds.Right);
    }

    [Fact]
    public void AScrapStaysWhereLayersWouldTurn()
    {
        var shape = Samples.Fill("bay", 10, 0, 50, 0, 50, 20, 52, 20, 52, 22, 50, 22, 50, 40, 10, 40);
        // The nub lies on the shore, which the later part sews.
        var shore = Samples.Rectangle("shore", 50, 10, 40, 20);
        var cores = Cut([1, null], [], shore, shape).OfType<FillPiece>().Where(p => p.Shape == shape).ToList();
        Assert.Equal([0, 1], cores.Select(p => p.Hooping));
        Assert.Equal(4e6, cores[1].Core.Area);
    }

    [Fact]
    public void AFillSewnAfterWhatLiesOverItEndsAtTheVisibleEdge()
    {
        var sky = Samples.Rectangle("sky", 10, 0, 80, 40);
        var star = Samples.Rectangle("star", 48, 10, 8, 8);
        var turned = new TurnedLayer(1, 0, 0, 1, new(53_000, 14_000), 48e6);
        var pieces = Cut([null, 0], [turned], sky, star).Cast<FillPiece>().ToList();
        var later = Assert.Single(pieces, p => p.Hooping == 1);
        Assert.All(
            [later.Core, later.EvenRows, later.OddRows],
            rows => Assert.True(Polygons.Intersect(rows, star.Footprint).IsEmpty)
        );
        // Nothing of the drawing is missing, and the earlier part lies under the star as drawn.
        Assert.Equal(sky.Footprint.Area, Polygons.Union(pieces.Select(p => p.Core)).Area);
        var earlier = Assert.Single(pieces, p => p.Hooping == 0 && p.Shape == sky);
        Assert.Equal(2 * 8 * 1e6, Polygons.Intersect(earlier.Core, star.Footprint).Area);
    }

    [Fact]
    public void ALineThatOnlyTouchesTheOverlapIsNotSewnTwice()
    {
        // It ends 0.2 mm before the seam: within the later part's overlap, but nothing of its own.
        var line = Samples.Run("line", 20, 20, 49.8, 20);
        Assert.Equal(0, Assert.Single(Cut([null], [], line)).Hooping);
        // A stub of 0.5 mm over the seam lies in the earlier part's overlap.
        var stub = Samples.Run("stub", 20, 20, 50.5, 20);
        var piece = Assert.IsType<RunPiece>(Assert.Single(Cut([null], [], stub)));
        Assert.Equal(30_500, piece.Lines.Sum(l => l.Length));
        // One of 3 mm is cut.
        Assert.Equal(2, Cut([null], [], Samples.Run("cut", 20, 20, 53, 20)).Length);
    }

    private static ImmutableArray<Piece> Cut(
        ImmutableArray<int?> owners,
        ImmutableArray<TurnedLayer> turned,
        params ReadOnlySpan<Shape> shapes
    )
    {
        var hoop = new Hoop("test", 60_000, 40_000);
        return Cutter.Cut(
            Samples.Drawing(shapes),
            new Plan
            {
                Hoop = hoop,
                Hoopings =
                [
                    Hooping("A", 30_000, new(0, 0, 50_000, 40_000)),
                    Hooping("B", 70_000, new(50_000, 0, 100_000, 40_000)),
                ],
                LowerBound = 2,
                Owners = owners,
                SeamLines = [new(0, 1, new([new(50_000, 0), new(50_000, 40_000)]))],
                TurnedLayers = turned,
                Joins =
                [
                    new()
                    {
                        Earlier = 0,
                        Later = 1,
                        WorstAt = new(50_000, 0),
                        PredictedError = 300,
                        Budget = new(300, 0, 0, 0, 0),
                        AlongSeam = 500,
                        Overlap = 800,
                        Narrowest = 800,
                        Covers = 500,
                    },
                ],
                Corners = [],
                PlacementLines = [],
                Seams = new(0, 0, 1),
            },
            Rules
        );

        Hooping Hooping(string letter, int x, Box territory)
        {
            var field = new Field(hoop, new(x, 20_000), Turn.None, 0);
            return new()
            {
                Letter = letter,
                Field = field,
                Ground = field.Usable,
                Territory = Region.Of(territory),
                Takes = [],
                Gives = [],
                Alignments = [],
            };
        }
    }
}
