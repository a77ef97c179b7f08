using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Marks;
using Splitter.Planning.Seams;

namespace Splitter.Tests.Planning.Marks;

public sealed class CornerPlacerTests
{
    /// <summary>
    /// Two fields share two bands of the first one, one above the other, 12.2 mm high each: just enough for arms of 20 and
    /// 10 mm. The corners of either band lie within 25 mm of all places of the other, so that one could be taken for the
    /// other, and who comes last finds none.
    /// </summary>
    [Fact]
    public void WhereCornersOfAnotherPartFillTheGroundThereIsNoRoom()
    {
        var recipe = Samples.Recipe(Samples.Hoop(200, 200)) with { Registration = new() { CornerArm = 20_000 } };
        ImmutableArray<Field> fields = [Field(0, 10, 44.4, 35.4), Field(0, -60, 44.4, 22.2), Field(0, 23.2, 44.4, 90)];
        var layout = new Layout(fields, [.. fields.Select(f => f.Usable)], 1);
        var drawing = Samples.Drawing(
            Samples.Rectangle("above", 5, -50, 30, 50),
            Samples.Rectangle("middle", 60, 60, 1, 1),
            Samples.Rectangle("below", 5, 40, 30, 40)
        );
        var division = new Division(
            [.. layout.Grounds.Select(Region.Of)],
            [1, 0, 2],
            [],
            [],
            [],
            new SeamCost(0, 0, 0)
        );
        var placed = CornerPlacer.Place(
            recipe,
            drawing,
            layout,
            division,
            new(
                [0, 1, 2],
                [
                    [],
                    [0],
                    [0],
                ]
            )
        );
        var error = Assert.Single(placed.Diagnostics);
        Assert.Equal("SPL3006", error.Code);
        Assert.Contains(
            "part C finds no room for two corners on the ground that it shares with A;",
            error.Message,
            StringComparison.Ordinal
        );
        // Alone it finds room there.
        var alone = new Layout([fields[0], fields[2]], [layout.Grounds[0], layout.Grounds[2]], 1);
        Assert.True(
            CornerPlacer
                .Place(
                    recipe,
                    drawing,
                    alone,
                    division with
                    {
                        Territories = [.. alone.Grounds.Select(Region.Of)],
                        Owners = [0, 0, 1],
                    },
                    new(
                        [0, 1],
                        [
                            [],
                            [0],
                        ]
                    )
                )
                .Succeeded
        );
    }

    /// <summary>Three hoopings; the last two both meet the first on a strip of 40 mm, where nothing is sewn.</summary>
    [Fact]
    public void CornersStandOnCommonGroundAndServeTwoHoopings()
    {
        var corners = Placed(Samples.Rectangle("far", 1, 1, 5, 5)).Corners;
        Assert.Equal(["A1", "A2", "A3"], corners.Select(c => c.Id));
        Assert.Equal(corners.OrderBy(c => (c.At.Y, c.At.X)), corners);
        var common = new Box(61_000, 1_000, 99_000, 149_000);
        Assert.All(
            corners,
            corner =>
            {
                Assert.Equal(0, corner.Donor);
                Assert.True(corner.Receivers is [1, 2]);
                Assert.All([corner.At, corner.ArmX, corner.ArmY], at => Assert.True(common.Contains(at), $"{at}"));
                Assert.All(
                    corners.Where(other => other != corner),
                    other => Assert.InRange(other.At.DistanceTo(corner.At), 16_000, 200_000)
                );
            }
        );
    }

    /// <summary>
    /// The second hooping sews over the lower half of the strip: the third is set by corners that stay in sight, 2 mm and the
    /// overlap away from it.
    /// </summary>
    [Fact]
    public void NothingIsSewnOverACornerBeforeItIsUsed()
    {
        var corners = Placed(Samples.Rectangle("cover", 60, 80, 40, 70)).Corners;
        Assert.All(
            corners.Where(c => c.Receivers.Contains(2)),
            corner => Assert.InRange(corner.At.Y, 1_000, 80_000 - 4_000)
        );
        Assert.Contains(corners, c => c.Receivers is [1] && c.At.Y > 80_000);
        Assert.Equal(corners.Select((_, i) => $"A{i + 1}"), corners.Select(c => c.Id));
    }

    /// <summary>
    /// Nothing is cut, so that the corners of the third one's ground count, 160 mm away at most: two of its corners lie nearly as far
    /// apart as the strip of 38 x 148 mm allows.
    /// </summary>
    [Fact]
    public void CornersLieFarApart()
    {
        var placed = Placed(Samples.Rectangle("far", 1, 1, 5, 5));
        Assert.All(placed.Settings.Skip(1), setting => Assert.InRange(setting!.Apart, 140_000, 153_000));
    }

    /// <summary>The same beside what it sews on the left and on the right of the strip.</summary>
    [Theory]
    [InlineData(0, 70, 74, 100)]
    [InlineData(90, 70, 60, 86)]
    public void NorBesideIt(int left, int width, int from, int to) =>
        Assert.All(
            Placed(Samples.Rectangle("cover", left, 0, width, 150)).Corners.Where(c => c.Receivers.Contains(2)),
            corner => Assert.InRange(corner.At.X, from * 1000, to * 1000)
        );

    /// <summary>The second hooping sews one shape whole; all else is the first one's.</summary>
    private static PlacedCorners Placed(FillShape shape)
    {
        ImmutableArray<Field> fields = [Field(0, 0, 100, 150), Field(60, 0, 160, 150), Field(60, 0, 160, 150)];
        var layout = new Layout(fields, [.. fields.Select(f => f.Usable)], 1);
        var division = new Division([.. layout.Grounds.Select(Region.Of)], [1, 0], [], [], [], new SeamCost(0, 0, 0));
        return CornerPlacer
            .Place(
                Samples.Recipe(Samples.Hoop(100, 150)),
                Samples.Drawing(shape, Samples.Rectangle("edge", 159, 149, 1, 1)),
                layout,
                division,
                new(
                    [0, 1, 2],
                    [
                        [],
                        [0],
                        [0],
                    ]
                )
            )
            .Value;
    }

    private static Field Field(double left, double top, double right, double bottom) =>
        new(
            Samples.Hoop(right - left, bottom - top),
            Point.FromMillimetres((left + right) / 2, (top + bottom) / 2),
            Turn.None,
            0
        );
}
