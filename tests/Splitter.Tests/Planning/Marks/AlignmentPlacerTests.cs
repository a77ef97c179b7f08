using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Marks;
using Splitter.Planning.Seams;

namespace Splitter.Tests.Planning.Marks;

/// <summary>Crosses of the second of two hoopings, whose seam is upright at 50 mm.</summary>
public sealed class AlignmentPlacerTests
{
    [Fact]
    public void TheFirstHoopingHasNoneAndNoneIsSewnWhereTheRecipeWantsNone()
    {
        Assert.Empty(Crosses([(10, 40)], hooping: 0));
        Assert.Empty(Crosses([(10, 40)], alignment: false));
        Assert.NotEmpty(Crosses([(10, 40)]));
    }

    /// <summary>A seam crosses each fill's edge twice. Of all these places those farthest apart are taken, three at most.</summary>
    [Fact]
    public void ThreePlacesFarApartAreTaken() =>
        Assert.Equal(
            [(50, 10), (50, 190), (50, 110)],
            Crosses([(10, 30), (80, 110), (150, 190)]).Select(c => (c.At.X / 1000, c.At.Y / 1000))
        );

    /// <summary>Nearer than 30 mm they would show no turn.</summary>
    [Theory]
    [InlineData(40, 2)]
    [InlineData(39, 1)]
    public void CrossesAreThirtyMillimetresApartOrThereIsOne(int end, int count)
    {
        var found = Crosses([(10, end)]);
        Assert.Equal(count, found.Length);
        Assert.All(found, cross => Assert.Equal("fill-0", cross.On));
    }

    /// <summary>Where seams give fewer than two, crosses on corners that this hooping takes help out, up to two in all.</summary>
    [Fact]
    public void CornersHelpOut()
    {
        Corner[] corners =
        [
            Corner("A1", 45, 120, 1),
            Corner("A2", 45, 180, 1),
            Corner("A3", 45, 195, 2),
            Corner("A4", 45, 400, 1),
        ];
        Assert.Equal(["fill-0", "A2"], Crosses([(10, 30)], corners).Select(c => c.On));
        Assert.Equal(["fill-0", "fill-0"], Crosses([(10, 40)], corners).Select(c => c.On));
        Assert.Equal(["A1", "A2"], Crosses([], corners).Select(c => c.On).Order(StringComparer.Ordinal));
    }

    /// <summary>A cross stands on the tape's grid, and says whom it meets.</summary>
    [Fact]
    public void ACrossMeetsEarlierWork()
    {
        var cross = Crosses([(10, 30)])[0];
        Assert.Equal((0, 0, 0), (cross.At.X % Units.TapeStep, cross.At.Y % Units.TapeStep, cross.With));
    }

    /// <summary>All of a cross lies in the field: one on its edge is left out.</summary>
    [Fact]
    public void ACrossStaysInTheField() => Assert.Equal([30], Crosses([(0, 30)]).Select(c => c.At.Y / 1000));

    /// <summary>On the edge of a fill of which the earlier part has too little to keep, nothing would be found.</summary>
    [Theory]
    [InlineData(46, 1)]
    [InlineData(48, 0)]
    public void AnEdgeIsMetOnlyWhereThePartHasGround(int left, int count) =>
        Assert.Equal(count, Crosses([(10, 30)], left: left).Length);

    /// <summary>A cross on a line stands where the seam crosses it, in the middle; a scrap of line is not met.</summary>
    [Theory]
    [InlineData(30, 103, 1)]
    [InlineData(30, 109, 1)]
    [InlineData(47, 103, 1)]
    [InlineData(48, 103, 0)]
    public void ALineIsMetWhereTheSeamCrossesIt(int from, int bend, int count)
    {
        var line = Samples.Run("line", from, 106, 70, 106);
        var drawing = Samples.Drawing(line, Samples.Rectangle("far", 0, 290, 1, 1));
        var crossing = new Polyline([
            Point.FromMillimetres(50, 100),
            Point.FromMillimetres(50, bend),
            Point.FromMillimetres(50, 112),
        ]);
        var found = Crosses(drawing, [new(0, 1, 0, crossing)], [null, 0]);
        Assert.Equal(Enumerable.Repeat(new AlignmentStitch(Point.FromMillimetres(50, 106), 0, "line"), count), found);
    }

    /// <summary>A line that comes from far off and bends shortly before the seam is met all the same.</summary>
    [Fact]
    public void ALineIsMetWhereverElseItGoes()
    {
        var line = Samples.Run("line", 10, 20, 46, 106, 90, 106);
        var drawing = Samples.Drawing(line, Samples.Rectangle("far", 0, 290, 1, 1));
        var crossing = new Polyline([Point.FromMillimetres(50, 105), Point.FromMillimetres(50, 107)]);
        Assert.Single(Crosses(drawing, [new(0, 1, 0, crossing)], [null, 0]));
    }

    private static ImmutableArray<AlignmentStitch> Crosses(
        (int From, int To)[] fills,
        Corner[]? corners = null,
        int hooping = 1,
        bool alignment = true,
        int left = 10
    ) =>
        Crosses(
            Samples.Drawing([
                .. fills.Select((f, i) => Samples.Rectangle($"fill-{i}", left, f.From, 90 - left, f.To - f.From)),
                Samples.Rectangle("far", 0, 290, 1, 1),
            ]),
            [
                .. fills.Select(
                    (f, i) =>
                        new Crossing(0, 1, i, new([Point.FromMillimetres(50, f.From), Point.FromMillimetres(50, f.To)]))
                ),
            ],
            [.. fills.Select(_ => (int?)null), 0],
            corners,
            hooping,
            alignment
        );

    private static ImmutableArray<AlignmentStitch> Crosses(
        Drawing drawing,
        ImmutableArray<Crossing> crossings,
        ImmutableArray<int?> owners,
        Corner[]? corners = null,
        int hooping = 1,
        bool alignment = true
    )
    {
        var recipe = Samples.Recipe(Samples.Hoop(100, 300));
        recipe = recipe with { Registration = recipe.Registration with { Alignment = alignment } };
        ImmutableArray<Field> fields = [Field(0), Field(40)];
        var layout = new Layout(fields, [.. fields.Select(f => f.Usable)], 1);
        var division = new Division(
            [Region.Of(new Box(0, 0, 50_000, 300_000)), Region.Of(new Box(50_000, 0, 140_000, 300_000))],
            owners,
            [],
            crossings,
            [],
            new SeamCost(0, 0, 0)
        );
        return AlignmentPlacer.Place(recipe, drawing, layout, division, [.. corners ?? []], hooping);
    }

    private static Field Field(int left) =>
        new(Samples.Hoop(100, 300), Point.FromMillimetres(left + 50, 150), Turn.None, 0);

    private static Corner Corner(string id, int x, int y, int receiver) =>
        new(
            id,
            Point.FromMillimetres(x, y),
            Point.FromMillimetres(x + 8, y),
            Point.FromMillimetres(x, y + 8),
            0,
            [receiver]
        );
}
