using System.Collections.Immutable;
using Splitter.Correcting;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fit;
using Splitter.Recipes;
using Splitter.Tests.Cutting;

namespace Splitter.Tests.Correcting;

/// <summary>What offsets say that were read without error. Places in millimetres.</summary>
public sealed class MeasuredMoveTests
{
    private static readonly Recipe Recipe = Samples.Recipe(Samples.Hoop(60, 40));

    /// <summary>0.6 mm to the right, 0.2 mm up, and a turn of a tenth of a degree.</summary>
    private static readonly RigidMove True = new(new(60_000, 20_000), new(600, -200), 0.1 * Math.PI / 180);

    /// <summary>Two holes say where a part goes; an edge, which shows one way only, says the same.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void ExactOffsetsGiveTheMoveBack(bool hasEdge)
    {
        ImmutableArray<Sighting> seen =
        [
            Hole(45, 5),
            Hole(95, 35),
            .. hasEdge ? [Edge(90, 2, 0), Edge(50, 38, 60)] : Array.Empty<Sighting>(),
        ];
        var move = MeasuredMove.Best(seen, GrainStretch.None);
        foreach (var at in new Vector[] { new(40_000, 0), new(100_000, 0), new(100_000, 40_000) })
            Assert.InRange((move.Of(at) - True.Of(at)).Length, 0, 1);
        Assert.InRange(MeasuredMove.Left(seen, move, GrainStretch.None), 0, 1);
    }

    /// <summary>An edge that was read 1 mm off its place pulls the part towards it, by less than that.</summary>
    [Fact]
    public void AnEdgeCountsAcrossItself()
    {
        ImmutableArray<Sighting> holes = [Hole(45, 20), Hole(95, 20)];
        var edge = Edge(70, 20, 90);
        var pulled = MeasuredMove.Best(
            [.. holes, edge with { Offset = edge.Offset - new Vector(0, 1000) }],
            GrainStretch.None
        );
        var by = pulled.Of(new Vector(70_000, 20_000)) - True.Of(new Vector(70_000, 20_000));
        // Along the edge all are as they were; across, the mean of 0, 0 and 1 mm.
        Assert.Equal((0, 333), (Math.Round(by.X), Math.Round(by.Y)));
    }

    /// <summary>One of four figures has its sign wrong: it is named, with what would go with the others.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    public void TheOneFigureThatDoesNotGoWithTheOthersIsFound(int wrong)
    {
        ImmutableArray<Sighting> right = [Hole(45, 5, "A1"), Hole(95, 5, "A2"), Hole(95, 35, "A3"), Hole(45, 35, "A4")];
        var seen = right.SetItem(wrong, right[wrong] with { Offset = right[wrong].Offset * -5 });
        var odd = Odd(seen);
        Assert.Equal(right[wrong].Name, odd?.Name);
        // As the hoop lies, right and up.
        Assert.Equal(right[wrong].Offset.X, odd!.Right, 2.0);
        Assert.Equal(-right[wrong].Offset.Y, odd.Up, 2.0);
    }

    /// <summary>Of two wrong figures neither is the odd one, and where all agree none is asked for.</summary>
    [Fact]
    public void WhereMoreThanOneFigureIsWrongNoneIsNamed()
    {
        ImmutableArray<Sighting> right = [Hole(45, 5, "A1"), Hole(95, 5, "A2"), Hole(95, 35, "A3"), Hole(45, 35, "A4")];
        Assert.Null(
            Odd([right[0] with { Offset = new(9000, 0) }, right[1], right[2] with { Offset = new(0, 9000) }, right[3]])
        );
        Assert.Null(Odd(right));
    }

    private static OddFigure? Odd(ImmutableArray<Sighting> seen)
    {
        ImmutableArray<Corner> corners = [.. seen.Select(s => new Corner(s.Name, s.At, s.At, s.At, 0, [1]))];
        return OddFigure.Of(Recipe, new PredictedFit(Recipe, 2, corners), HandPlan.Of([null]), 1, seen);
    }

    private static Sighting Hole(double x, double y, string name = "")
    {
        var at = Point.FromMillimetres(x, y);
        var place = new Vector(at.X, at.Y);
        return new(at, 0, place - True.Of(place)) { Name = name };
    }

    /// <summary>An edge that one sees square to a direction, degrees.</summary>
    private static Sighting Edge(double x, double y, double degrees)
    {
        var across = new Vector(Math.Cos(degrees * Math.PI / 180), Math.Sin(degrees * Math.PI / 180));
        var hole = Hole(x, y);
        return hole with { Offset = across * Vector.Dot(hole.Offset, across), Across = across };
    }
}
