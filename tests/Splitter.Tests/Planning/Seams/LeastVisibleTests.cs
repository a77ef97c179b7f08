using System.Collections.Immutable;
using CsCheck;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Seams;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Seams;

/// <summary>Two to six fields over random artwork, and small drawings whose best seam anyone can see.</summary>
public sealed class LeastVisibleTests
{
    /// <summary>Ground that snapping to whole micrometres may add or take, mm²: a hundredth is less than a stitch's hole.</summary>
    private const double AreaTolerance = 0.01;

    private static readonly Gen<(Drawing Drawing, Layout Layout)> Laid =
        from shapes in SeamSamples.Shapes(150, 120).List[1, 20]
        from columns in Gen.Int[1, 3]
        from rows in Gen.Int[1, 2]
        from shared in Gen.Int[8, 25]
        from jitter in Gen.Int[-2000, 2000].Array[12]
        select (Samples.Drawing([.. shapes]), Grid(columns, rows, shared, jitter));

    [Fact]
    public void TerritoriesPartTheGroundAndEachLiesInItsField() =>
        Laid.Holds(
            t =>
            {
                var territories = Divide(t).Territories;
                var grounds = t.Layout.Grounds;
                var all = Polygons.Union(grounds.Select(Region.Of));
                var union = Polygons.Union(territories);
                Assert.InRange(Mm2(Polygons.Subtract(all, union).Area), 0, AreaTolerance);
                Assert.InRange(Mm2(territories.Sum(x => x.Area) - all.Area), -AreaTolerance, AreaTolerance);
                for (var i = 0; i < grounds.Length; i++)
                    Assert.True(territories[i].IsEmpty || grounds[i].Contains(territories[i].Bounds), $"{i}");
            },
            cases: 40
        );

    [Fact]
    public void EveryPlaceOfTheArtworkBelongsToOneFieldOnly() =>
        (
            from laid in Laid
            from places in Gen.Select(Gen.Int[0, 150_000], Gen.Int[0, 120_000]).Array[60]
            select (laid, places)
        ).Holds(
            t =>
            {
                var division = Divide(t.laid);
                var holds = division.Territories.Select(Polygons.Containment).ToList();
                var lines = division.Seams.Select(s => Polygons.Stroke(s.Line, 10, Cap.Square, Join.Bevel)).ToList();
                foreach (var (x, y) in t.places)
                {
                    var count = holds.Count(h => h(x, y));
                    var onSeam = lines.Exists(l => Polygons.Distance(l, new Point(x, y)) == 0);
                    var isCovered = t.laid.Layout.Grounds.Any(g => g.Contains(new Point(x, y)));
                    Assert.True(
                        onSeam || count == (isCovered ? 1 : 0) || OnEdge(t.laid.Layout, x, y),
                        $"{x}, {y}: {count}"
                    );
                }
            },
            cases: 15
        );

    [Fact]
    public void ShapesThatFitAFieldAreNotCut() =>
        Laid.Holds(
            t =>
            {
                var division = Divide(t);
                for (var i = 0; i < t.Drawing.Shapes.Length; i++)
                {
                    var box = t.Drawing.Shapes[i].Footprint.Bounds;
                    var fitting = t.Layout.Grounds.Count(g => g.Contains(box));
                    Assert.Equal(fitting > 0, division.Owners[i] is not null);
                    Assert.True(division.Owners[i] is not { } owner || t.Layout.Grounds[owner].Contains(box));
                }
                Assert.All(division.Crossings, c => Assert.Null(division.Owners[c.Shape]));
            },
            cases: 30
        );

    [Fact]
    public void TheSameEveryTimeBesideTheSameStraightSeams() =>
        Laid.Holds(
            t =>
            {
                var (one, again) = (Divide(t), Divide(t));
                Assert.Equal(
                    Divider.Divide(new() { Seams = SeamRule.Straight }, t.Drawing, t.Layout).Cost.Cost,
                    one.Cost.StraightCost
                );
                Assert.Equal(one.Cost, again.Cost);
                Assert.Equal(Written(one), Written(again));
            },
            cases: 20
        );

    [Fact]
    public void TheSeamTakesTheGapBetweenTwoFills()
    {
        // The fills stick out of the fields above and below, so that none of them stays whole; the gap bends.
        var division = Divide(
            (
                Samples.Drawing(
                    Samples.Fill("left", 0, -1, 72, -1, 72, 30, 69, 60, 78, 101, 0, 101),
                    Samples.Fill("right", 76, -1, 150, -1, 150, 101, 82, 101, 73, 60, 76, 30),
                    Samples.Run("across", 1, 50, 149, 50)
                ),
                Two()
            )
        );
        // Nothing but the line can show: 10 for one crossing, a little more where it is not square.
        Assert.InRange(division.Cost.Cost, 10, 12);
        Assert.True(division.Cost.StraightCost > 40, $"{division.Cost}");
    }

    [Fact]
    public void TheSeamFollowsTheEdgeBetweenTwoColours()
    {
        var division = Divide(
            (
                Samples.Drawing(
                    Samples.Rectangle("ground", 0, -1, 150, 102),
                    Samples.Fill("upper", 0, -1, 70, -1, 78, 30, 70, 70, 74, 101, 0, 101)
                ),
                Two()
            )
        );
        // The upper fill's edge is 105 mm long: along it the seam costs a fifth of a straight one.
        Assert.InRange(division.Cost.Cost, 15, 30);
        Assert.True(division.Cost.StraightCost > 80, $"{division.Cost}");
    }

    [Fact]
    public void TheSeamLeavesALineOnAnEdgeWhole()
    {
        // An outlined fill with a wavy edge: the line lies on the edge that the seam follows.
        var edge = Enumerable
            .Range(0, 52)
            .SelectMany(i => new[] { 74 + (3 * Math.Sin(i / 8.0)), (2 * i) - 1 })
            .ToArray();
        var division = Divide(
            (
                Samples.Drawing(
                    Samples.Rectangle("ground", 0, -1, 150, 102),
                    Samples.Fill("upper", [0, -1, .. edge, 0, 101]),
                    Samples.Run("line", edge)
                ),
                Two()
            )
        );
        // A fifth of a straight seam, and one crossing where the seam ends, which stays on the grid; cut lengthwise the line
        // would be crossed at every bend.
        Assert.InRange(division.Cost.Cost, 15, 40);
    }

    [Fact]
    public void TheSeamGoesRoundOrUnderASmallShapeThatStaysWhole()
    {
        var star = Samples.Rectangle("star", 70, 40, 9, 9);
        var division = Divide((Samples.Drawing(Samples.Rectangle("sky", 0, 0, 150, 100), star), Two()));
        var owner = division.Owners[1];
        Assert.NotNull(owner);
        // What lies under the star is never sewn after it.
        var under = Polygons.Intersect(star.Footprint, division.Territories[1]);
        Assert.True(owner == 1 || Mm2(under.Area) < 0.5, $"{Mm2(under.Area)}");
        // From top to bottom through the sky, and a little more for going round: nothing is hidden but below the star.
        Assert.InRange(division.Cost.Cost, 85, 110);
    }

    [Fact]
    public void OverEmptyClothTheSeamRunsThroughTheMiddle()
    {
        var division = Divide(
            (Samples.Drawing(Samples.Rectangle("a", 0, 0, 20, 20), Samples.Rectangle("b", 130, 80, 20, 20)), Two())
        );
        Assert.Equal(0, division.Cost.Cost);
        Assert.All(Assert.Single(division.Seams).Line.Points, p => Assert.InRange(p.X, 73_000, 77_000));
    }

    /// <summary>
    /// Two fields of one size, one lower and further right, over one fill: wherever the seam cuts it both sides have room
    /// for the least overlap, although it has to end where the fields' edges cross.
    /// </summary>
    [Fact]
    public void TheSeamKeepsRoomForTheOverlapOfBothSides() =>
        (from across in Gen.Int[50, 75] from down in Gen.Int[0, 40] select (across, down)).Holds(
            t =>
            {
                Box first = new(0, 0, 85_000, 100_000);
                Box second = new(t.across * 1000, t.down * 1000, (t.across * 1000) + 85_000, (t.down * 1000) + 100_000);
                // Like artwork on a cover of fields: 2 mm inside where a field ends on bare cloth.
                var ground = Polygons.Offset(
                    Polygons.Union(Region.Of(first), Region.Of(second)),
                    -2000,
                    Splitter.Geometry.Join.Mitre
                );
                var division = Divide((Samples.Drawing(Samples.Fill("sea", ground)), Of([first, second])));
                Assert.NotEmpty(division.Crossings);
                Assert.All(division.Crossings, c => Assert.InRange(c.Room, SeamRoom.Least, int.MaxValue));
            },
            cases: 20
        );

    private static Division Divide((Drawing Drawing, Layout Layout) t) =>
        Divider.Divide(new() { Seams = SeamRule.LeastVisible }, t.Drawing, t.Layout);

    /// <summary>Two fields of 85 x 100 mm that share 20 mm about x 75.</summary>
    private static Layout Two() => Of([new(0, 0, 85_000, 100_000), new(65_000, 0, 150_000, 100_000)]);

    private static Layout Grid(int columns, int rows, int shared, int[] jitter)
    {
        var (w, h) = (150_000 / columns, 120_000 / rows);
        return Of([
            .. from row in Enumerable.Range(0, rows)
            from column in Enumerable.Range(0, columns)
            let half = shared * 500
            let move = jitter[(2 * ((row * columns) + column)) % 12]
            select new Box(
                (column * w) - half + move,
                (row * h) - half - move,
                ((column + 1) * w) + half + move,
                ((row + 1) * h) + half - move
            ),
        ]);
    }

    private static Layout Of(ImmutableArray<Box> grounds) =>
        new(
            [.. grounds.Select(g => new Field(new Hoop("test", g.Width, g.Height), g.Centre, Turn.None, 0))],
            grounds,
            1
        );

    private static string Written(Division division) =>
        string.Join(
            '\n',
            division
                .Seams.Select(s => $"{s.Earlier} {s.Later} {string.Join(' ', s.Line.Points)}")
                .Append(string.Join(' ', division.Owners))
                .Concat(division.Territories.SelectMany(t => t.Rings).Select(r => string.Join(' ', r.Points)))
        );

    private static bool OnEdge(Layout layout, int x, int y) =>
        layout.Grounds.Any(g => x == g.Left || x == g.Right || y == g.Top || y == g.Bottom);

    private static double Mm2(double squareMicrometres) => squareMicrometres / 1e6;
}
