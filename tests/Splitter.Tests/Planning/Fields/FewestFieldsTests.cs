using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fields;
using Splitter.Planning.Fields.Covering;

namespace Splitter.Tests.Planning.Fields;

public sealed class FewestFieldsTests
{
    /// <summary>
    /// One orientation: ceil(W / w) * ceil(H / h), provably. Both: solved exactly for whole positions by a solver of
    /// another make, where a field of 4 x 3 covers 10 x 10 nine times and one of 5 x 7 covers 12 x 12 five times.
    /// A unit is 100 mm; grounds are 0.1 mm larger than a unit's multiple, as centres lie on the tape's grid.
    /// </summary>
    [Theory]
    [InlineData(10, 10, 4, 3, true, 9)]
    [InlineData(10, 10, 4, 3, false, 12)]
    [InlineData(12, 12, 5, 7, true, 5)]
    [InlineData(12, 12, 5, 7, false, 6)]
    [InlineData(7, 5, 3, 2, false, 9)]
    public void RectanglesTakeAsFewFieldsAsProven(int w, int h, int fieldW, int fieldH, bool turning, int fewest)
    {
        var task = Task(
            [Samples.Ground(0, 0, w * 100, 0, w * 100, h * 100, 0, h * 100)],
            [],
            (fieldW * 100) + 0.2,
            (fieldH * 100) + 0.2,
            turning
        );
        var answer = FewestSearch.Find(task);
        Assert.Equal(fewest, answer.Covers[0].Length);
        Assert.InRange(answer.LowerBound, 1, fewest);
        AssertCovers(task, answer.Covers[0]);
    }

    /// <summary>Fields that share o along a strip: ceil((W - o) / (w - o)), provably, as each adds w - o to the first.</summary>
    [Theory]
    [InlineData(285)]
    [InlineData(300)]
    [InlineData(355)]
    [InlineData(520)]
    [InlineData(700)]
    public void AStripTakesAsManyFieldsAsTheClosedFormWithCommonGround(double length)
    {
        var recipe = Samples.Recipe(Samples.Hoop(100, 100));
        var plan = Planner.Plan(
            new(recipe, Samples.Drawing(Samples.Rectangle("strip", 0, 0, length, 90))),
            recipe.Hoops[0]
        );
        // The usable field is the hoop; its ground is smaller by the reach of 0.1 mm a side.
        var common = Units.ToMillimetres(CommonGround.Least(recipe.Registration)) - 0.2;
        Assert.Equal((int)Math.Ceiling((length - common) / (99.8 - common)), plan.Value.Hoopings.Length);
    }

    public static TheoryData<int> Seeds => [.. Enumerable.Range(0, 64)];

    public static TheoryData<int> SomeSeeds => [.. Enumerable.Range(64, 12)];

    /// <summary>Against CP-SAT over the same places: equal counts wherever that solver proves its own.</summary>
    [Theory]
    [MemberData(nameof(Seeds))]
    public void GeneratedDrawingsTakeAsFewFieldsAsAnotherSolverProves(int seed)
    {
        var task = Generated(seed);
        var candidates = Candidates.For(task, new(task), 10, []);
        var (ours, others) = (int.MaxValue, CpSat.Fewest(candidates.Table, candidates.Locked));
        new CoverSearch(candidates.Table, []).Run(
            [],
            0,
            20_000_000,
            cover =>
            {
                ours = Math.Min(ours, cover.Length);
                return true;
            }
        );
        Assert.NotNull(others);
        Assert.Equal(others, ours);
        // What holds wherever fields may lie holds for these places.
        Assert.InRange(new PointBound(task).Of(ours), 1, ours);
        Assert.Equal(others, new ExactCover(candidates.Table, ours).Solve(30_000_000).Sets?.Length ?? ours);
    }

    [Theory]
    [MemberData(nameof(SomeSeeds))]
    public void MovingOrTurningTheDrawingChangesNoCount(int seed)
    {
        var task = Generated(seed);
        var here = FewestSearch.Find(task);
        AssertCovers(task, here.Covers[0]);
        foreach (
            var change in new Func<Point, Point>[]
            {
                p => new(p.X + 37_000, p.Y - 12_000),
                p => new(-p.Y, p.X),
                p => new(-p.X, -p.Y),
            }
        )
        {
            var quarter = change(new(0, 1)).X != change(new(0, 0)).X;
            // Not by 'with': the bounds come from what the task is made of.
            var other = new CoverTask(
                [.. task.Drawn.Select(d => Changed(d, change))],
                [.. task.Wholes.Select(w => Box.Around([change(new(w.Left, w.Top)), change(new(w.Right, w.Bottom))]))],
                task.Template,
                task.Turns.Length == 2 || !quarter ? task.Turns : [Turn.Quarter],
                task.Rules,
                [],
                []
            );
            Assert.Equal(here.Covers[0].Length, FewestSearch.Find(other).Covers[0].Length);
        }
    }

    private static Region Changed(Region region, Func<Point, Point> change) =>
        Polygons.FromRings(region.Rings.Select(r => new Ring([.. r.Points.Select(change)])), FillRule.EvenOdd);

    /// <summary>Rectangles, L, rings and scattered motifs in turn, every other one without turning the hoop.</summary>
    private static CoverTask Generated(int seed)
    {
        var random = new Random(seed);
        double Next(int from, int to) => random.Next(from, to);
        var (w, h) = (Next(180, 420), Next(180, 420));
        var drawn = (seed % 4) switch
        {
            0 => [Rectangle(0, 0, w, h)],
            1 => [Rectangle(0, 0, w, h / 3), Rectangle(0, 0, w / 3, h)],
            2 => [Polygons.Subtract(Rectangle(0, 0, w, h), Rectangle(w / 4, h / 4, w / 2, h / 2))],
            _ => Enumerable
                .Range(0, 14)
                .Select(_ => Rectangle(Next(0, 400), Next(0, 400), Next(5, 60), Next(5, 60)))
                .ToImmutableArray(),
        };
        ImmutableArray<Box> wholes =
        [
            .. Enumerable
                .Range(0, seed % 5)
                .Select(_ => Rectangle(Next(0, (int)w - 40), Next(0, (int)h - 40), 40, 25).Bounds),
        ];
        return Task(drawn, wholes, Next(90, 140), Next(90, 180), turning: seed / 4 % 2 == 0);
    }

    private static Region Rectangle(double x, double y, double w, double h) =>
        Samples.Ground(x, y, x + w, y, x + w, y + h, x, y + h);

    private static CoverTask Task(
        ImmutableArray<Region> drawn,
        ImmutableArray<Box> wholes,
        double w,
        double h,
        bool turning
    ) =>
        new(
            drawn,
            wholes,
            new FieldTemplate(Samples.Hoop(w, h), 0, 0),
            turning && w != h ? [Turn.None, Turn.Quarter] : [Turn.None],
            Rules: null,
            [],
            []
        );

    private static void AssertCovers(CoverTask task, ImmutableArray<Field> fields)
    {
        var grounds = fields.Select(task.Template.Ground).ToList();
        var all = Polygons.Union(grounds.Select(Region.Of));
        Assert.All(task.Drawn, d => Assert.True(Polygons.Subtract(d, all).IsEmpty));
        Assert.All(task.Wholes, w => Assert.Contains(grounds, g => g.Contains(w)));
    }
}
