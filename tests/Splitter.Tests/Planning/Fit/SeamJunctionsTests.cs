using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fit;
using Splitter.Planning.Seams;

namespace Splitter.Tests.Planning.Fit;

/// <summary>Which parts meet at a place, told from the ends of seams. Places in millimetres.</summary>
public sealed class SeamJunctionsTests
{
    [Fact]
    public void ThreeSeamsThatEndAtOnePlaceMakeAJunction()
    {
        ImmutableArray<Seam> seams =
        [
            Seam(0, 1, (50, 0), (50, 50)),
            Seam(1, 2, (50, 50), (100, 80)),
            Seam(0, 2, (50, 50), (0, 80)),
        ];
        var junction = Junctions(seams, 3).Along(0, 1, seams[0].Line.Points);
        Assert.NotNull(junction);
        Assert.Equal(Point.FromMillimetres(50, 50), junction.At);
        Assert.Equal([0, 1, 2], junction.Parts.AsEnumerable());
    }

    /// <summary>Strips of 0.4 mm: all seams end within a few millimetres of each other, and none meets another one.</summary>
    [Fact]
    public void SeamsSideBySideDoNotMeet()
    {
        var seams = Enumerable.Range(0, 29).Select(i => Seam(i, i + 1, (0.4 * i, 0), (0.4 * i, 80))).ToImmutableArray();
        var junctions = Junctions(seams, 30);
        Assert.All(seams, seam => Assert.Null(junctions.Along(seam.Earlier, seam.Later, seam.Line.Points)));
    }

    [Fact]
    public void ASeamThatEndsNearAJunctionIsNoPartOfIt()
    {
        ImmutableArray<Seam> seams =
        [
            Seam(0, 1, (50, 0), (50, 50)),
            Seam(1, 2, (50, 50), (100, 80)),
            Seam(0, 2, (50, 50), (0, 80)),
            Seam(2, 3, (50, 53), (50, 90)),
        ];
        var junctions = Junctions(seams, 4);
        Assert.Equal([0, 1, 2], junctions.Along(0, 1, seams[0].Line.Points)!.Parts.AsEnumerable());
        Assert.Null(junctions.Along(2, 3, seams[3].Line.Points));
    }

    /// <summary>Four quarters, and two junctions of three so near to each other that overlaps of all four lie over each other.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(2)]
    public void FourPartsMeetInACross(double apart)
    {
        var seams = ImmutableArray.Create(
            Seam(0, 1, (50, 0), (50, 50)),
            Seam(0, 2, (50, 50), (0, 50)),
            Seam(1, 3, (50, 50 + apart), (100, 50)),
            Seam(2, 3, (50, 50 + apart), (50, 100))
        );
        if (apart > 0)
            seams = seams.Add(Seam(1, 2, (50, 50), (50, 50 + apart)));
        Assert.Equal([0, 1, 2, 3], Junctions(seams, 4).Along(0, 1, seams[0].Line.Points)!.Parts.AsEnumerable());
    }

    /// <summary>As many as anyone may list: each one more can only widen the circle.</summary>
    [Fact]
    public void AnyNumberOfPartsMayMeet()
    {
        var fit = Fit(40);
        int Circle(int parts) => (int)fit.Circle95([.. Enumerable.Range(0, parts)], Point.FromMillimetres(50, 50));
        Assert.InRange(Circle(40), Circle(24), 3 * Circle(24));
    }

    /// <summary>A flower pot that two parts cut, below leaves which a third one sews whole: no hole opens at its rim.</summary>
    [Theory]
    [InlineData(49, true)]
    [InlineData(43, false)]
    public void APartThatCutsNothingThereIsNoPartOfIt(double cutAsFarAs, bool meet)
    {
        ImmutableArray<Seam> seams =
        [
            Seam(0, 1, (50, 0), (50, 50)),
            Seam(1, 2, (50, 50), (100, 50)),
            Seam(0, 2, (50, 50), (0, 50)),
        ];
        ImmutableArray<Crossing> cut =
        [
            Crossing(seams[0]),
            Crossing(Seam(1, 2, (100 - cutAsFarAs, 50), (100, 50))),
            Crossing(Seam(0, 2, (cutAsFarAs, 50), (0, 50))),
        ];
        var junctions = new SeamJunctions(seams, cut, Fit(3));
        Assert.Equal(meet, junctions.Along(0, 1, seams[0].Line.Points) is not null);
    }

    /// <summary>All of one shape that is everywhere.</summary>
    private static SeamJunctions Junctions(ImmutableArray<Seam> seams, int parts) =>
        new(seams, [.. seams.Select(Crossing)], Fit(parts));

    private static Crossing Crossing(Seam seam) => new(seam.Earlier, seam.Later, 0, seam.Line);

    /// <summary>All set by the first.</summary>
    private static PredictedFit Fit(int parts)
    {
        var receivers = Enumerable.Range(1, parts - 1).ToImmutableArray();
        var places = new[] { Point.FromMillimetres(10, 10), Point.FromMillimetres(90, 90) };
        return new(
            Samples.Recipe(Samples.Hoop(100, 100)),
            parts,
            [.. places.Select((p, i) => new Corner($"A{i + 1}", p, p, p, 0, receivers))]
        );
    }

    private static Seam Seam(int earlier, int later, (double X, double Y) from, (double X, double Y) to) =>
        new(earlier, later, new([Point.FromMillimetres(from.X, from.Y), Point.FromMillimetres(to.X, to.Y)]));
}
