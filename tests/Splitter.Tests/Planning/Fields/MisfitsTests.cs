using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fields;
using Splitter.Planning.Fields.Covering;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Fields;

/// <summary>Fields of 100 x 100 mm over a bar of 250 x 80 mm, their middles on its own. Millimetres.</summary>
public sealed class MisfitsTests
{
    private static readonly FieldTemplate Template = new(Samples.Hoop(100, 100), 0, 0);

    /// <summary>
    /// Two fields share 50 x 100, so that corners in its ends have their middle at 75, 40 and 25, 50 either side of it: at the
    /// bar's edge, 40 away, the square of the misfit is (1 + 1600 / 6250) / 2.
    /// </summary>
    private const double Pair = 0.628;

    [Fact]
    public void TwoFieldsMissEachOtherAtTheirSeamsEnds() => Assert.Equal(Eighth(Pair), Sum([50, 100]), 9);

    /// <summary>In a row of which none but neighbours share ground, each meeting has the misfit of the later field alone.</summary>
    [Fact]
    public void EachFieldOfARowMissesItsNeighbourAlone() => Assert.Equal(3 * Eighth(Pair), Sum([50, 100, 150, 200]), 9);

    /// <summary>
    /// Three fields share ground with each other. From the middle one both others have the error of their own setting, and
    /// where they meet each other they miss by both; the outer two share 20 x 100 around 100, where neither was set.
    /// </summary>
    [Theory]
    [InlineData(100)]
    public void WaysThatPartAddUp(int middle)
    {
        // Common ground of the middle one and either other: 60 x 100, corners 30, 50 either side, spread 6800.
        var neighbours = Variance(0, 40, 6800);
        // Where the outer ones meet, 100, ±40: from the middle of either common ground, 80 or 120, 20 aside.
        var outer = 2 * Variance(20, 40, 6800);
        Assert.Equal((2 * Eighth(neighbours)) + Eighth(outer), Sum([60, 100, 140], middle), 9);
    }

    [Fact]
    public void WithoutCommonGroundThereIsNoWay() => Assert.Equal(double.PositiveInfinity, Sum([50, 155]));

    /// <summary>Common ground of 1 mm holds no corner.</summary>
    [Fact]
    public void NorWithTooLittle() => Assert.Equal(double.PositiveInfinity, Sum([50, 149]));

    /// <summary>On bare cloth nothing can be seen to miss.</summary>
    [Fact]
    public void WhereNothingIsDrawnNothingMisses() => Assert.Equal(0, Sum([300, 350]));

    [Fact]
    public void WithoutCornersNothingIsAsked() => Assert.Equal(0, Sum([50, 155], rules: false));

    [Fact]
    public void ASumGrowsWithTheEighthPowerOfMisfits()
    {
        Assert.Equal(3 * 256, Misfits.Scaled(3, 2), 9);
        Assert.Equal(1.5, Misfits.Root(Misfits.Scaled(1, 1.5)), 9);
    }

    private static double Eighth(double square) => square * square * square * square;

    private static double Variance(double x, double y, double spread) => (1 + (((x * x) + (y * y)) / spread)) / 2;

    /// <param name="middles">Of the fields, from the left.</param>
    /// <param name="held">The first field holds this place.</param>
    private static double Sum(int[] middles, int held = 50, bool rules = true)
    {
        ImmutableArray<Field> fields = [.. middles.Select(x => Template.At(Point.FromMillimetres(x, 40), Turn.None))];
        var at = Point.FromMillimetres(held, 40);
        var task = new CoverTask(
            [Samples.Ground(0, 0, 250, 0, 250, 80, 0, 80)],
            [],
            Template,
            [Turn.None],
            rules ? new RegistrationRules() : null,
            [],
            []
        )
        {
            Middle = at,
        };
        return new Misfits(task, new(task, fields)).Sum(fields);
    }
}
