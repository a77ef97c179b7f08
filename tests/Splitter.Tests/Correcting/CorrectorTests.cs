using System.Collections.Immutable;
using Splitter.Correcting;
using Splitter.Cutting;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Parts;
using Splitter.Planning;
using Splitter.Recipes;
using Splitter.Stitching;

namespace Splitter.Tests.Correcting;

/// <summary>
/// A sheet of 244 x 60 mm in three fields of 100 x 80 mm; the third part is measured at the corners that it is set by, and
/// what is left of it moved.
/// </summary>
public sealed class CorrectorTests
{
    private static readonly Recipe Recipe = Samples.Recipe(
        Samples.Hoop(100, 80),
        new ListedFields([
            new(Point.FromMillimetres(48, 30), Turn.None),
            new(Point.FromMillimetres(122, 30), Turn.None),
            new(Point.FromMillimetres(196, 30), Turn.None),
        ])
    );

    private static readonly Lazy<(Job Job, Plan Plan, ImmutableArray<Part> Parts)> Made = new(() =>
    {
        var drawing = Samples.Drawing(Samples.Rectangle("sheet", 0, 0, 244, 60));
        var plan = Planner.Plan(new(Recipe, drawing), Recipe.Hoops[0]).Value;
        var stitched = Stitcher.Stitch(Cutter.Cut(drawing, plan, Recipe.Overlap), 1);
        var bodies = BodySteps.Of(plan, stitched, Recipe.Cloth.MostLayers);
        return (new Job(Recipe, Recipe.Hoops, [], drawing), plan, PartBuilder.Build(Recipe, drawing, plan, bodies));
    });

    /// <summary>All of it came out 0.8 mm to the right and 0.4 mm up: it goes back by that, and nothing else changes.</summary>
    [Fact]
    public void WhatIsLeftIsMovedBack()
    {
        var (before, after) = (Made.Value.Parts[2], Corrected(_ => (800, 400)).Value);
        var left = before.Steps.Where(s => s.Kind is StepKind.Body or StepKind.NextCorners).ToList();
        Assert.Equal([StepKind.Alignment, .. left.Select(s => s.Kind)], after.Part.Steps.Select(s => s.Kind));
        Assert.Equal(Enumerable.Range(1, left.Count + 1), after.Part.Steps.Select(s => s.Number));
        // Up is where y lessens: the field is not turned.
        Assert.Equal(
            left.SelectMany(Places).Select(p => new Point(p.X - 800, p.Y + 400)),
            after.Part.Steps.Skip(1).SelectMany(Places)
        );
        Assert.Equal(
            (Verdict.Moved, -800, -400, 0.0),
            (after.Move.Verdict, after.Move.Right, after.Move.Up, Math.Round(after.Move.Degrees, 2))
        );
        Assert.All(after.Left, place => Assert.InRange(place.Off, 0, 1));
    }

    /// <summary>It meets the first part, which lies in the middle; the second one meets that as it did.</summary>
    [Fact]
    public void ItsOwnJoinsAreToldAndOthersStayAsTheyAre()
    {
        var (plan, after) = (Made.Value.Plan, Corrected(_ => (800, 400)).Value);
        Assert.Equal([(0, 1), (0, 2)], plan.Joins.Select(j => (j.Earlier, j.Later)));
        Assert.Same(plan.Joins[0], after.Plan.Joins[0]);
        Assert.Equal((plan.Joins[1], after.Plan.Joins[1]), after.Joins.Select(j => (j.Before, j.After)).Single());
        // Holes that were looked at one by one lie nearer than corners that were set over tacks.
        Assert.InRange(after.Plan.Joins[1].Within95, 1, plan.Joins[1].Within95 - 1);
    }

    /// <summary>Turned by two hundredths about the field's middle: 1.15 degrees, which the move turns back.</summary>
    [Fact]
    public void ATurnIsToldInDegrees()
    {
        var middle = Made.Value.Parts[2].Field.Centre;
        var turned = Corrected(at => ((int)(-0.02 * (at.Y - middle.Y)), (int)(-0.02 * (at.X - middle.X)))).Value;
        Assert.Equal(Verdict.Turned, turned.Move.Verdict);
        Assert.Equal(1.146, Math.Abs(turned.Move.Degrees), 0.02);
        Assert.InRange(Math.Abs(turned.Move.Right) + Math.Abs(turned.Move.Up), 0, 50);
    }

    /// <summary>Crosses stand where the corners come to lie, where that has room in the field.</summary>
    [Fact]
    public void CrossesAreSewnFirstWhereTheCornersAre()
    {
        var after = Corrected(_ => (-800, 400)).Value;
        Assert.Equal(
            Taken().Select(c => new Point(c.At.X + 800, c.At.Y + 400)),
            after.Part.Hooping.Alignments.Select(a => a.At)
        );
        Assert.Equal(Taken().Select(c => c.Id), after.Part.Hooping.Alignments.Select(a => a.On));
        Assert.Equal(Taken().Select(c => c.Id), after.Checked.Select(o => o.At));
        Assert.Empty(after.Plan.Hoopings[2].Takes);
    }

    /// <summary>Before the body only: corners that it sews over come out then, if there are any.</summary>
    [Theory]
    [InlineData(StepKind.Body, "A2 and A3", true)]
    [InlineData(StepKind.Body, "", false)]
    [InlineData(StepKind.NextCorners, "A2 and A3", false)]
    [InlineData(StepKind.NextCorners, "", false)]
    internal void WhatIsSewnOverIsTakenOutFirst(StepKind next, string corners, bool isTold)
    {
        var part = Made.Value.Parts[2] with
        {
            TakenOut = [.. corners.Split(" and ", StringSplitOptions.RemoveEmptyEntries)],
        };
        var step = CheckCrosses.Step(
            [new(part.Field.Centre, 0, "A1")],
            part,
            part.Steps.First(s => s.Kind == StepKind.Body) with
            {
                Kind = next,
            },
            new StopTexts(Recipe.Cloth, new(Recipe.Output))
        );
        Assert.Equal(isTold, step.Stop!.Contains($"Take out {corners}", StringComparison.Ordinal));
    }

    [Fact]
    public void WhatFitsIsSewnOnAsItIs()
    {
        var fits = Corrected(_ => (0, 0));
        Assert.Empty(fits.Diagnostics);
        Assert.Equal((Verdict.Fits, 0, 0), (fits.Value.Move.Verdict, fits.Value.Move.Right, fits.Value.Move.Up));
        Assert.Equal(Made.Value.Plan.Joins.Length, fits.Value.Plan.Joins.Length);
    }

    [Theory]
    [InlineData("A", "SPL4")]
    [InlineData("D", "SPL4")]
    public void TheFirstPartAndOneThatIsNotThereAreNotCorrected(string part, string code)
    {
        var refused = Corrected(_ => (800, 400), part);
        Assert.False(refused.Succeeded);
        Assert.StartsWith(code, Assert.Single(refused.Diagnostics).Code, StringComparison.Ordinal);
    }

    private static IEnumerable<Corner> Taken() =>
        Made.Value.Plan.Hoopings[2].Takes.Select(i => Made.Value.Plan.Corners[i]);

    private static IEnumerable<Point> Places(Step step) =>
        step.Moves.SelectMany(m => m.Block.Stitches).Select(s => s.At);

    /// <param name="offset">To the right and up, µm, of what should lie at a place.</param>
    private static Result<Correction> Corrected(Func<Point, (int Right, int Up)> offset, string part = "C")
    {
        var call = Place.Whole("call");
        var offsets = Taken().Select(c => new MeasuredOffset(c.Id, offset(c.At).Right, offset(c.At).Up, call));
        return Corrector.Correct(
            Recipe,
            Made.Value.Job.Drawing,
            Made.Value.Plan,
            Made.Value.Parts,
            new(part, [.. offsets], call)
        );
    }
}
