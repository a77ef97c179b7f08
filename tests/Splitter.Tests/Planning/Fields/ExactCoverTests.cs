using Splitter.Planning.Fields.Covering;

namespace Splitter.Tests.Planning.Fields;

public sealed class ExactCoverTests
{
    private const long Work = 2_000_000_000;

    /// <summary>
    /// Cormen, Leiserson, Rivest and Stein, Introduction to Algorithms, figure 35.3 (from memory): the greedy choice takes
    /// four sets, three are enough.
    /// </summary>
    [Fact]
    public void TheExampleWhereGreedyTakesFourIsCoveredByThree()
    {
        int[][] sets =
        [
            [1, 2, 3, 4, 5, 6],
            [5, 6, 8, 9],
            [1, 4, 7, 10],
            [2, 5, 7, 8, 11],
            [3, 6, 9, 12],
            [10, 11],
        ];
        var table = new CoverTable(sets.Length);
        for (var element = 1; element <= 12; element++)
            table.Add([.. Enumerable.Range(0, sets.Length).Where(s => sets[s].Contains(element))]);
        var answer = new ExactCover(table, sets.Length + 1).Solve(Work);
        Assert.Equal(3, answer.Sets?.Length);
        Assert.Equal(3, answer.Bound);
    }

    /// <summary>
    /// Covers of Steiner triple systems: Fulkerson, Nemhauser and Trotter 1974, "Two computationally difficult set
    /// covering problems that arise in computing the 1-width of incidence matrices of Steiner triple systems",
    /// Mathematical Programming Study 2: 5 of 9 points, 9 of 15, 18 of 27.
    /// </summary>
    [Theory]
    [InlineData(9, 5)]
    [InlineData(15, 9)]
    [InlineData(27, 18)]
    public void SteinerTriplesAreCoveredByAsFewPointsAsPublished(int points, int fewest)
    {
        var table = SteinerTriples(points);
        var answer = new ExactCover(table, points + 1).Solve(Work);
        Assert.Equal(fewest, answer.Sets?.Length);
        Assert.Equal(fewest, answer.Bound);
    }

    [Theory]
    [InlineData(9, 5)]
    [InlineData(15, 9)]
    [InlineData(27, 18)]
    public void TheLocalSearchFindsTheSameCovers(int points, int fewest)
    {
        var best = int.MaxValue;
        new CoverSearch(SteinerTriples(points), []).Run(
            [],
            fewest,
            5_000_000,
            cover =>
            {
                best = Math.Min(best, cover.Length);
                return true;
            }
        );
        Assert.Equal(fewest, best);
    }

    [Fact]
    public void WithoutWorkTheBoundIsStillSound()
    {
        var answer = new ExactCover(SteinerTriples(27), 28).Solve(0);
        Assert.InRange(answer.Bound, 9, 18);
    }

    /// <summary>
    /// Order 9 and 27: points of the affine space over three elements, triples its lines. Order 15: Bose's construction
    /// over five and three elements (of the 80 systems of that order others have smaller covers).
    /// </summary>
    private static CoverTable SteinerTriples(int points)
    {
        var table = new CoverTable(points);
        for (var a = 0; a < points; a++)
        for (var b = a + 1; b < points; b++)
        {
            var c = points == 15 ? Bose(a, b) : Third(a, b);
            if (c > b)
                table.Add([a, b, c]);
        }
        return table;

        // Number x + 5 i is (x, i): triples (x,0) (x,1) (x,2) and (x,i) (y,i) ((x+y)/2,i+1), where half is three times.
        static int Bose(int a, int b)
        {
            var (x, i, y, j) = (a % 5, a / 5, b % 5, b / 5);
            return x == y ? x + (5 * (3 - i - j))
                : i == j ? (3 * (x + y) % 5) + (5 * ((i + 1) % 3))
                : (i + 1) % 3 == j ? (((2 * y) - x + 5) % 5) + (5 * i)
                : (((2 * x) - y + 5) % 5) + (5 * j);
        }

        static int Third(int a, int b)
        {
            var (third, place) = (0, 1);
            for (; a + b > 0; a /= 3, b /= 3, place *= 3)
                third += place * ((6 - (a % 3) - (b % 3)) % 3);
            return third;
        }
    }
}
