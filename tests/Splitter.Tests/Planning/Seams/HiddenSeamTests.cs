using System.Collections.Immutable;
using CsCheck;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Seams;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Seams;

/// <summary>
/// Two fields that share 20 mm, and between two fills a gap that winds from top to bottom inside that ground: a seam can
/// show nothing at all, and a straight one cannot but show. What is shown is counted by the test.
/// </summary>
public sealed class HiddenSeamTests
{
    private static readonly ImmutableArray<Box> Grounds =
    [
        new(0, 0, 85_000, 100_000),
        new(65_000, 0, 150_000, 100_000),
    ];

    /// <summary>Where the gap's middle lies every 12 mm and more, and half its width, mm.</summary>
    private static readonly Gen<Drawing> Gapped =
        from xs in Gen.Double[69.5, 80.5].Array[6, 8]
        from half in Gen.Double[1.5, 2.5]
        select Gap(xs, half);

    /// <summary>
    /// The seam may cut a corner of a fill where the gap turns sharply, by no more than a few millimetres in all, and shows
    /// far less than the straight one wherever that shows anything worth the name.
    /// </summary>
    [Fact]
    public void AWindingGapIsFollowed() =>
        Gapped.Holds(
            drawing =>
            {
                var hidden = Divide(drawing, SeamRule.LeastVisible);
                var (straight, _) = ShownSeams.Of(Divide(drawing, SeamRule.Straight), drawing);
                var (least, _) = ShownSeams.Of(hidden, drawing);
                Assert.True(least <= Corners, $"{least:0.00} mm shown, straight {straight:0.00}");
                if (straight > 3 * Corners)
                    Assert.True(hidden.Cost.Cost < hidden.Cost.StraightCost / 2, $"{hidden.Cost}");
            },
            cases: 30
        );

    /// <summary>What is told is what seams show, straight ones and others.</summary>
    [Fact]
    public void TheCostThatIsToldIsWhatTheLinesShow() =>
        Gapped.Holds(
            drawing =>
            {
                foreach (var rule in new[] { SeamRule.Straight, SeamRule.LeastVisible })
                {
                    var division = Divide(drawing, rule);
                    var (least, most) = ShownSeams.Of(division, drawing);
                    // Places are counted a twentieth of a millimetre apart there and a quarter of one here.
                    Assert.InRange(division.Cost.Cost, (least * 0.98) - 0.5, (most * 1.02) + 0.5);
                }
            },
            cases: 30
        );

    /// <summary>What the seam may show amid fills, mm.</summary>
    private const double Corners = 3;

    private static Division Divide(Drawing drawing, SeamRule rule) =>
        Divider.Divide(
            new() { Seams = rule },
            drawing,
            new(
                [.. Grounds.Select(g => new Field(new Hoop("test", g.Width, g.Height), g.Centre, Turn.None, 0))],
                Grounds,
                1
            )
        );

    /// <summary>Fills left and right of the gap; they stick out of the fields above and below, and so both are cut.</summary>
    private static Drawing Gap(double[] xs, double half)
    {
        var ys = xs.Select((_, i) => -1 + (102.0 * i / (xs.Length - 1))).ToArray();
        double[] Along(double aside) => [.. xs.Zip(ys).SelectMany(p => new[] { p.First + aside, p.Second })];
        return Samples.Drawing(
            Samples.Fill("left", [0, 101, 0, -1, .. Along(-half)]),
            Samples.Fill("right", [150, 101, 150, -1, .. Along(half)])
        );
    }
}
