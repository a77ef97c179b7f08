using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fields;
using Splitter.Planning.Fields.Covering;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Fields;

public sealed class LayoutsTests
{
    public static TheoryData<int> Seeds => [.. Enumerable.Range(0, 10)];

    public static TheoryData<int> SomeSeeds => [.. Enumerable.Range(7, 3)];

    [Theory]
    [MemberData(nameof(SomeSeeds))]
    public void EveryLayoutCoversIsLinkedAndHasAsManyFields(int seed)
    {
        var (recipe, drawing) = Generated(seed);
        var layouts = FieldPlacer.Place(recipe, drawing, recipe.Hoops[0]).Value;
        Assert.InRange(layouts.Length, 1, 8);
        Assert.Single(layouts.Select(l => l.Fields.Length).Distinct());
        foreach (var layout in layouts)
        {
            var template = new FieldTemplate(recipe.Hoops[0], 0, Units.TapeStep);
            Assert.Empty(Coverage.Problems(recipe, drawing, layout, template));
            Assert.Single(Links.Groups(layout.Fields, CoverTask.Of(recipe, drawing, template, null)));
            Assert.InRange(layout.LowerBound, 1, layout.Fields.Length);
        }
        Assert.Equal(layouts.Length, layouts.Select(Places).Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(layouts.Select(Places), FieldPlacer.Place(recipe, drawing, recipe.Hoops[0]).Value.Select(Places));
    }

    [Theory]
    [MemberData(nameof(SomeSeeds))]
    public void SettledFieldsMeetNearlyAsWellAndTheirSeamsShowNoMore(int seed)
    {
        var (recipe, drawing) = Generated(seed);
        var task = CoverTask.Of(recipe, drawing, new(recipe.Hoops[0], 0, Units.TapeStep), null);
        var covers = FewestSearch.Find(task).Covers;
        var misfits = new Misfits(task, new CoverGrid(task, covers.SelectMany(c => c)));
        var settled = Settling.Settled(task, covers, 4);
        var allowed = Misfits.Scaled(covers.Min(misfits.Sum), Settling.Allowance);
        Assert.All(settled, fields => Assert.True(misfits.Sum(fields) <= allowed));
        var seams = new SeamOutlook(task);
        var meeting = covers.Where(c => misfits.Sum(c) <= misfits.Sum(settled[0])).Select(seams.Sum);
        // The misfit allowed counts for one millimetre.
        Assert.All(meeting, shown => Assert.True(seams.Sum(settled[0]) <= shown + 1));
    }

    /// <summary>Whatever seams are said to show: here the more, the further a field lies to the right.</summary>
    [Theory]
    [MemberData(nameof(SomeSeeds))]
    public void RefinedFieldsGoOnCoveringAndMeetNearlyAsWell(int seed)
    {
        var (recipe, drawing) = Generated(seed);
        var template = new FieldTemplate(recipe.Hoops[0], 0, Units.TapeStep);
        var task = CoverTask.Of(recipe, drawing, template, null);
        var fields = FieldPlacer.Place(recipe, drawing, recipe.Hoops[0]).Value[0].Fields;
        var refined = Refining.Refined(task, fields, (grounds, _) => grounds.Sum(g => g.Centre.X / 1000.0), 1);
        var again = Refining.Refined(task, fields, (grounds, _) => grounds.Sum(g => g.Centre.X / 1000.0), 4);
        Assert.True(refined.SequenceEqual(again));
        Assert.True(refined.Sum(f => f.Centre.X) < fields.Sum(f => f.Centre.X));
        Assert.Empty(
            Coverage.Problems(recipe, drawing, new(refined, [.. refined.Select(template.Ground)], 1), template)
        );
        Assert.Single(Links.Groups(refined, task));
        var misfits = new Misfits(task, new CoverGrid(task, fields));
        Assert.True(misfits.Sum(refined) <= Misfits.Scaled(misfits.Sum(fields), Refining.Allowance));
    }

    /// <summary>
    /// Whoever allows one thread has one. Each asking waits for a second until one has come, so that a busy machine
    /// cannot hide that more would work.
    /// </summary>
    [Fact]
    public void NoMoreThreadsWorkThanAreAllowed()
    {
        var (recipe, drawing) = Generated(1);
        var task = CoverTask.Of(recipe, drawing, new(recipe.Hoops[0], 0, Units.TapeStep), null);
        var fields = FieldPlacer.Place(recipe, drawing, recipe.Hoops[0]).Value[0].Fields;
        Assert.Equal(1, MostAtOnce(1));
        Assert.InRange(MostAtOnce(4), 2, 4);

        int MostAtOnce(int jobs)
        {
            var (most, now, gate) = (0, 0, new object());
            Refining.Refined(
                task,
                fields,
                (_, _) =>
                {
                    lock (gate)
                    {
                        most = Math.Max(most, ++now);
                        Monitor.PulseAll(gate);
                        if (most < 2)
                            Monitor.Wait(gate, TimeSpan.FromMilliseconds(jobs > 1 ? 1000 : 2));
                        now--;
                    }
                    return 0;
                },
                jobs
            );
            return most;
        }
    }

    [Fact]
    public void TheFirstFieldGoesOnHoldingWhatItMust()
    {
        var recipe = Samples.Recipe(Samples.Hoop(100, 100));
        var drawing = Samples.Drawing(Samples.Rectangle("a", 0, 0, 150, 60));
        var held = new Box(60_000, 20_000, 90_000, 40_000);
        var task = CoverTask.Of(recipe, drawing, new(recipe.Hoops[0], 0, Units.TapeStep), held);
        var fields = FewestSearch.Find(task).Covers[0];
        var order = fields.OrderByDescending(f => f.Usable.Contains(held)).ToImmutableArray();
        foreach (var sign in new[] { 1, -1 })
            Assert.True(
                Refining.Refined(task, order, (g, _) => sign * g.Sum(b => b.Left / 1000.0), 2)[0].Usable.Contains(held)
            );
    }

    /// <summary>The bound holds wherever fields may lie, so for any choice of places; CP-SAT solves one of them.</summary>
    [Theory]
    [MemberData(nameof(Seeds))]
    public void TheBoundHoldsWhereSeamsNeedRoom(int seed)
    {
        var (recipe, drawing) = Generated(seed);
        var task = CoverTask.Of(recipe, drawing, new(recipe.Hoops[0], 0, Units.TapeStep), null);
        var candidates = Candidates.For(task, new(task), 10, []);
        if (CpSat.Fewest(candidates.Table, []) is { } fewest)
            Assert.InRange(new PointBound(task).Of(100), 1, fewest);
        else
            Assert.Fail("the other solver proves nothing");
    }

    /// <summary>
    /// Fields side by side share o: ceil((W - o) / (w - o)) * ceil((H - o) / (h - o)), provably the fewest for rows of one
    /// orientation (the closed form for one axis, twice).
    /// </summary>
    [Theory]
    [InlineData(300, 200)]
    [InlineData(451, 333)]
    public void RowsOverARectangleAreAsManyAsTheClosedForm(int width, int height)
    {
        var recipe = Samples.Recipe(Samples.Hoop(100, 100));
        var drawing = Samples.Drawing(Samples.Rectangle("a", 0, 0, width, height));
        var task = CoverTask.Of(recipe, drawing, new(recipe.Hoops[0], 0, Units.TapeStep), null);
        var (side, common) = (100_000 - (3 * Units.TapeStep), task.Common);
        int Along(int length) => (int)Math.Ceiling(((length * 1000.0) - common) / (side - common));
        Assert.All(Shelves.Covers(task), cover => Assert.Equal(Along(width) * Along(height), cover.Length));
        Assert.Equal(2, Shelves.Covers(task).Count());
    }

    private static string Places(Layout layout) =>
        string.Join(' ', layout.Fields.Select(f => (f.Centre, f.Turn)).Order());

    private static (Recipe Recipe, Drawing Drawing) Generated(int seed)
    {
        var random = new Random(seed);
        var shapes = new List<Shape> { Samples.Rectangle("ground", 0, 0, random.Next(150, 300), random.Next(60, 200)) };
        for (var i = 0; i < 12; i++)
        {
            var (x, y) = (random.Next(0, 320), random.Next(0, 320));
            var motif = Samples.Rectangle($"motif {i}", x, y, random.Next(5, 50), random.Next(5, 50));
            shapes.Add(motif with { KeepWhole = i % 3 == 0 });
        }
        return (
            Samples.Recipe(Samples.Hoop(random.Next(110, 140), random.Next(110, 180))),
            Samples.Drawing([.. shapes])
        );
    }
}
