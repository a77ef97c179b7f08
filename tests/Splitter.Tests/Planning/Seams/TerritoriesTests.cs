using System.Collections.Immutable;
using CsCheck;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Seams;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Seams;

/// <summary>Territories part the ground of all fields: each place has one, and each lies in its own field.</summary>
public sealed class TerritoriesTests
{
    /// <summary>Boxes anyhow over each other, so that halves of what they share leave ground to none.</summary>
    private static readonly Gen<ImmutableArray<Box>> Grounds = Gen.Select(Gen.Int[0, 120], Gen.Int[0, 120])
        .Array[2, 5]
        .Select(at =>
            at.Select(p => new Box(p.Item1 * 1000, p.Item2 * 1000, (p.Item1 + 100) * 1000, (p.Item2 + 80) * 1000))
                .ToImmutableArray()
        );

    [Fact]
    public void StraightSeamsLeaveNothingToNoneAndNothingToTwo() =>
        Grounds.Holds(
            grounds =>
            {
                var drawing = Samples.Drawing(Samples.Rectangle("sheet", 0, 0, 220, 200));
                Parts(StraightSeams.Draw(drawing, grounds, new Wholeness(drawing, grounds)).Territories, grounds);
            },
            cases: 40
        );

    /// <summary>Seams that follow a gap, and the outer edges, which are the fields' own to the last corner.</summary>
    [Fact]
    public void SoDoSeamsThatFollowAGap()
    {
        ImmutableArray<Box> grounds = [new(0, 0, 85_000, 70_000), new(65_000, 0, 150_000, 70_000)];
        var division = Divider.Divide(
            new() { Seams = SeamRule.LeastVisible },
            Samples.Drawing(
                Samples.Fill("left", 0, -1, 72, -1, 69, 30, 76, 71, 0, 71),
                Samples.Fill("right", 76, -1, 150, -1, 150, 71, 80, 71, 73, 30)
            ),
            new Layout(
                [.. grounds.Select(g => new Field(new Hoop("test", g.Width, g.Height), g.Centre, Turn.None, 0))],
                grounds,
                1
            )
        );
        Parts(division.Territories, grounds);
        Assert.InRange(division.Cost.Cost, 0, 1);
    }

    /// <summary>
    /// Two colours meet along an edge that bends: a seam all along it shows a fifth of its length, which is 102.3 mm between the fields'
    /// ends, whether fields lie side by side or one above the other.
    /// </summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void SeamsFollowAnEdgeWhicheverWayItRuns(bool isLevel)
    {
        ImmutableArray<Box> grounds = [Box(0, 0, 85, 100), Box(65, 0, 150, 100)];
        var division = Divider.Divide(
            new() { Seams = SeamRule.LeastVisible },
            Samples.Drawing(
                Fill("one", 0, -1, 70, -1, 78, 33, 72, 66, 80, 101, 0, 101),
                Fill("other", 70, -1, 150, -1, 150, 101, 80, 101, 72, 66, 78, 33)
            ),
            new Layout(
                [.. grounds.Select(g => new Field(new Hoop("test", g.Width, g.Height), g.Centre, Turn.None, 0))],
                grounds,
                1
            )
        );
        Assert.InRange(division.Cost.Cost, 102.3 * SeamPrice.AlongEdge * 0.98, 102.3 * SeamPrice.AlongEdge * 1.05);

        Box Box(int left, int top, int right, int bottom) =>
            isLevel
                ? new(top * 1000, left * 1000, bottom * 1000, right * 1000)
                : new(left * 1000, top * 1000, right * 1000, bottom * 1000);

        Shape Fill(string id, params double[] corners) =>
            Samples.Fill(id, isLevel ? [.. corners.Chunk(2).SelectMany(p => new[] { p[1], p[0] })] : corners);
    }

    /// <summary>But for what snapping to whole micrometres adds or takes, µm²: a hundredth of a square millimetre.</summary>
    private static void Parts(ImmutableArray<Region> territories, ImmutableArray<Box> grounds)
    {
        var all = Polygons.Union(grounds.Select(Region.Of));
        Assert.InRange(Polygons.Subtract(all, Polygons.Union(territories)).Area, 0, 10_000);
        Assert.InRange(territories.Sum(t => t.Area) - all.Area, -10_000, 10_000);
        Assert.All(territories.Zip(grounds), t => Assert.True(t.First.IsEmpty || t.Second.Contains(t.First.Bounds)));
    }
}
